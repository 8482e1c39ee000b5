import { useSignal } from '@preact/signals';
import { giveAndRead } from '../../actions/settings.ts';
import { FoldedPart } from '../../parts/foldedPart.tsx';
import type { Session } from '../../session.ts';
import { settingsInForce } from '../../session.ts';
import { SITES } from '../../text/inventoryText.ts';

/** So many sites are shown at first. */
const SHOWN = 12;

/** Each site with its temperatures, its store and its vehicles. */
export function SitesPart({ session }: { readonly session: Session }) {
  const all = useSignal(false);
  const sites = (session.reading.value?.sites ?? []).filter((site) => site !== '');
  const { sites: said } = settingsInForce(session);
  const known = sites.filter((site) => said[site]?.coldest !== undefined && said[site].average !== undefined);
  const shown = all.value ? sites : sites.slice(0, SHOWN);
  return (
    <FoldedPart title={SITES.title} state={SITES.state(known.length, sites.length)}>
      <p>{sites.length === 0 ? SITES.none : SITES.lead}</p>
      {shown.map((site) => (
        <SiteFields key={site} session={session} site={site} />
      ))}
      {shown.length < sites.length && (
        <button type="button" class="secondary" onClick={() => (all.value = true)}>
          {SITES.all(sites.length)}
        </button>
      )}
    </FoldedPart>
  );
}

type OfSite = { readonly session: Session; readonly site: string };

function SiteFields({ session, site }: OfSite) {
  const said = settingsInForce(session).sites[site];
  const open = [
    ...(said?.coldest === undefined ? [SITES.noColdest] : []),
    ...(said?.average === undefined ? [SITES.noAverage] : []),
  ];
  return (
    <fieldset class="site">
      <legend>{site}</legend>
      <div class="pair">
        <Degrees session={session} site={site} which="coldest" />
        <Degrees session={session} site={site} which="average" />
      </div>
      <Tick session={session} site={site} which="heated" />
      <Tick session={session} site={site} which="parked" />
      {open.length > 0 && <small>{open.join('; ')}</small>}
    </fieldset>
  );
}

function Degrees({ session, site, which }: OfSite & { readonly which: 'coldest' | 'average' }) {
  const value = settingsInForce(session).sites[site]?.[which];
  const take = (text: string): void =>
    void giveAndRead(session, ['sites', site, which], text === '' ? undefined : Number(text));
  return (
    <label>
      {SITES[which]} (°C)
      <input
        type="number"
        step="any"
        value={value ?? ''}
        onChange={({ currentTarget }) => take(currentTarget.value)}
      />
    </label>
  );
}

function Tick({ session, site, which }: OfSite & { readonly which: 'heated' | 'parked' }) {
  return (
    <label>
      <input
        type="checkbox"
        checked={settingsInForce(session).sites[site]?.[which] === true}
        onChange={({ currentTarget }) =>
          void giveAndRead(session, ['sites', site, which], currentTarget.checked)
        }
      />
      {SITES[which]}
    </label>
  );
}
