/** The namespace in which hosts show the functions. */
export const NAMESPACE = 'CRANK';
