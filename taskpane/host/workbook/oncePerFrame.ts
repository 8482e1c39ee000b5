/** Many changes come at once: the last of them is looked at, before the screen is drawn again. */
export function oncePerFrame(act: () => void): () => void {
  let waits = false;
  return () => {
    if (waits) return;
    waits = true;
    requestAnimationFrame(() => {
      waits = false;
      act();
    });
  };
}
