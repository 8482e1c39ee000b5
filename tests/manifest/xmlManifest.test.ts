import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { NAMESPACE } from '../../functions/list.ts';
import { deploymentAddress, manifestFacts } from '../../manifest/facts.ts';
import { jsonManifest } from '../../manifest/jsonManifest.ts';
import { xmlManifest } from '../../manifest/xmlManifest.ts';
import { ROOT, textOf } from '../house/sourceFiles.ts';

const ADDRESS = 'https://addins.example.org/crankbook';
const facts = manifestFacts(ADDRESS);
const text = xmlManifest(facts);
const xml = new JSDOM(text, { contentType: 'application/xml' }).window.document;

const all = (name: string): Element[] =>
  [...xml.getElementsByTagName('*')].filter((each) => each.localName === name);
const namesOf = (element: Element): string[] => [...element.children].map(({ localName }) => localName);
const resids = (): string[] =>
  [...xml.querySelectorAll('[resid]')].map((each) => each.getAttribute('resid')!);
const addresses = [...text.matchAll(/DefaultValue="([^"]*:\/\/[^"]*)"/g)].map((found) => found[1]!);

describe('the add-in-only manifest', () => {
  it('is well-formed', () => {
    expect(xml.querySelector('parsererror')).toBeNull();
    expect(xml.documentElement.localName).toBe('OfficeApp');
  });

  it('defines every resource that it names, and names every one that it defines', () => {
    const resources = all('Resources')[0]!;
    const defined = [...resources.querySelectorAll('[id]')].map(({ id }) => id).sort();
    expect(new Set(defined).size).toBe(defined.length);
    expect([...new Set(resids())].sort()).toEqual(defined);
    for (const id of defined) expect(id.length, id).toBeLessThanOrEqual(32);
  });

  it('keeps its elements in the order that the schema wants', () => {
    expect(namesOf(xml.documentElement)).toEqual([
      'Id',
      'Version',
      'ProviderName',
      'DefaultLocale',
      'DisplayName',
      'Description',
      'IconUrl',
      'HighResolutionIconUrl',
      'SupportUrl',
      'AppDomains',
      'Hosts',
      'Requirements',
      'DefaultSettings',
      'Permissions',
      'VersionOverrides',
    ]);
    const host = all('Host').at(-1)!;
    expect(namesOf(host)).toEqual(['Runtimes', 'AllFormFactors', 'DesktopFormFactor']);
    expect(namesOf(all('ExtensionPoint')[0]!)).toEqual(['Script', 'Page', 'Metadata', 'Namespace']);
    expect(namesOf(all('DesktopFormFactor')[0]!)).toEqual(['GetStarted', 'FunctionFile', 'ExtensionPoint']);
    expect(namesOf(all('Control')[0]!)).toEqual(['Label', 'Supertip', 'Icon', 'Action']);
    expect(namesOf(all('Resources')[0]!)).toEqual(['Images', 'Urls', 'ShortStrings', 'LongStrings']);
  });

  it('has one long-lived runtime for functions, pane and commands', () => {
    const runtimes = all('Runtime');
    expect(runtimes.map((each) => each.getAttribute('lifetime'))).toEqual(['long']);
    const page = runtimes[0]!.getAttribute('resid');
    const sameRuntime = [...all('Page')[0]!.children, ...all('FunctionFile'), ...all('Action')[0]!.children];
    expect(sameRuntime.map((each) => each.getAttribute('resid'))).toEqual([page, page, page]);
    expect(all('TaskpaneId')).toEqual([]);
  });

  it('names https addresses of one origin only', () => {
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.filter((each) => !each.startsWith(`${ADDRESS}/`))).toEqual([]);
  });

  it('names icons that exist, in the sizes that the ribbon wants', () => {
    const icons = addresses.filter((each) => each.endsWith('.png')).map((each) => each.slice(ADDRESS.length));
    for (const icon of icons) expect(existsSync(`${ROOT}manifest${icon}`), icon).toBe(true);
    const sizes = [...all('Icon')].map((icon) => [...icon.children].map((each) => each.getAttribute('size')));
    expect(sizes).toEqual([
      ['16', '32', '80'],
      ['16', '32', '80'],
    ]);
  });

  it('keeps within the lengths that Excel takes', () => {
    for (const string of all('ShortStrings')[0]!.children)
      expect(string.getAttribute('DefaultValue')!.length).toBeLessThanOrEqual(125);
    for (const string of all('LongStrings')[0]!.children)
      expect(string.getAttribute('DefaultValue')!.length).toBeLessThanOrEqual(250);
    expect(facts.description.length).toBeLessThanOrEqual(250);
    expect(facts.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('agrees with the package, the functions and the other manifest', () => {
    const { version } = JSON.parse(textOf('package.json')) as { version: string };
    expect(all('Version')[0]!.textContent).toBe(`${version}.0`);
    const namespace = all('Namespace')[0]!.getAttribute('resid')!;
    expect(xml.getElementById(namespace)!.getAttribute('DefaultValue')).toBe(NAMESPACE);
    const other = jsonManifest(facts) as { id: string; version: string };
    expect([other.id, other.version]).toEqual([all('Id')[0]!.textContent, version]);
  });

  it('states the floor of what Excel must have', () => {
    const sets = all('Set').map((each) => `${each.getAttribute('Name')} ${each.getAttribute('MinVersion')}`);
    expect(sets).toEqual(['CustomFunctionsRuntime 1.3', 'SharedRuntime 1.1', 'ExcelApi 1.12']);
  });

  it('shows signs that mean something in XML as what they are', () => {
    const odd = { ...facts, name: 'Batteries <6T> & "cranks"' };
    const parsed = new JSDOM(xmlManifest(odd), { contentType: 'application/xml' }).window.document;
    expect(parsed.querySelector('DisplayName')!.getAttribute('DefaultValue')).toBe(odd.name);
    const path = manifestFacts(deploymentAddress('https://addins.example.org/tools&data/crankbook'));
    const served = new JSDOM(xmlManifest(path), { contentType: 'application/xml' }).window.document;
    expect(served.querySelector('IconUrl')!.getAttribute('DefaultValue')).toBe(
      'https://addins.example.org/tools&data/crankbook/icons/icon32.png',
    );
  });
});

describe('npm run manifest', () => {
  const run = (...args: string[]) =>
    spawnSync(process.execPath, ['--import', 'tsx/esm', 'manifest/makeManifests.ts', ...args], {
      cwd: ROOT,
      encoding: 'utf8',
    });

  it('says what it needs where no address, or none that Excel takes, is given', () => {
    expect(run()).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('npm run manifest -- --address'),
    });
    const wrong = run('--address', 'http://addins.example.org');
    expect(wrong).toMatchObject({ status: 2, stderr: expect.stringContaining('must be an https address') });
  });

  it('writes nothing where there is no build to describe, and else three files for the address', () => {
    const folder = mkdtempSync(`${tmpdir()}/manifests-`);
    const args = ['--address', 'https://addins.example.org/crankbook/', '--folder', folder];
    expect(run(...args)).toMatchObject({ status: 2, stderr: expect.stringContaining('npm run build first') });
    expect(readdirSync(folder)).toEqual([]);
    writeFileSync(`${folder}/taskpane.html`, '');
    expect(run(...args)).toMatchObject({ status: 0, stderr: '' });
    const written = (name: string): string => readFileSync(`${folder}/${name}`, 'utf8');
    expect(written('manifest.xml')).toBe(text);
    expect(JSON.parse(written('manifest.json'))).toEqual(jsonManifest(facts));
    expect(written('functions.json')).toContain(`"helpUrl":"${ADDRESS}/docs/functions.html#crank`);
    rmSync(folder, { recursive: true });
  });
});

describe('the address of deployment', () => {
  it('loses the slashes at its end', () => {
    expect(deploymentAddress('https://addins.example.org/crankbook//')).toBe(ADDRESS);
    expect(deploymentAddress('https://addins.example.org')).toBe('https://addins.example.org');
  });

  it.each([
    'http://addins.example.org',
    'addins.example.org',
    '',
    'https://a.example/?x=1',
    'https://a.example/#x',
  ])('is refused with a sentence: %s', (given) => {
    expect(() => deploymentAddress(given)).toThrow(`--address must be an https address`);
  });
});
