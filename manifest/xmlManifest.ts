import type { ManifestFacts } from './facts.ts';

/** Each address or text that the manifest names, under the id by which it is called. */
type Resources = Readonly<Record<string, string>>;

const ESCAPED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ESCAPED[sign]!);

const defaults = (element: string, resources: Resources): string =>
  Object.entries(resources)
    .map(([id, text]) => `<bt:${element} id="${id}" DefaultValue="${escaped(text)}"/>`)
    .join('\n        ');

/** The add-in-only manifest: the one that every Excel takes, volume-licensed ones and closed networks included. */
export function xmlManifest(facts: ManifestFacts): string {
  return `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<OfficeApp xmlns="http://schemas.microsoft.com/office/appforoffice/1.1" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance" xmlns:bt="http://schemas.microsoft.com/office/officeappbasictypes/1.0" xmlns:ov="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="TaskPaneApp">
${base(facts)}
${overrides(facts)}
</OfficeApp>
`;
}

function base(facts: ManifestFacts): string {
  const { id, version, provider, name, description, requirements } = facts;
  // In a path an ampersand is allowed, and in XML it is not.
  const address = escaped(facts.address);
  const sets = requirements.map((each) => `<Set Name="${each.set}" MinVersion="${each.version}"/>`);
  return `  <Id>${id}</Id>
  <Version>${version}</Version>
  <ProviderName>${escaped(provider)}</ProviderName>
  <DefaultLocale>en-US</DefaultLocale>
  <DisplayName DefaultValue="${escaped(name)}"/>
  <Description DefaultValue="${escaped(description)}"/>
  <IconUrl DefaultValue="${address}/icons/icon32.png"/>
  <HighResolutionIconUrl DefaultValue="${address}/icons/icon64.png"/>
  <SupportUrl DefaultValue="${address}/docs/install.html"/>
  <AppDomains>
    <AppDomain>${new URL(facts.address).origin}</AppDomain>
  </AppDomains>
  <Hosts>
    <Host Name="Workbook"/>
  </Hosts>
  <Requirements>
    <Sets>
      ${sets.join('\n      ')}
    </Sets>
  </Requirements>
  <DefaultSettings>
    <SourceLocation DefaultValue="${address}/taskpane.html"/>
  </DefaultSettings>
  <Permissions>ReadWriteDocument</Permissions>`;
}

// Pane and functions name the same page, for both live in the one runtime.
function overrides(facts: ManifestFacts): string {
  return `  <VersionOverrides xmlns="http://schemas.microsoft.com/office/taskpaneappversionoverrides" xsi:type="VersionOverridesV1_0">
    <Hosts>
      <Host xsi:type="Workbook">
        <Runtimes>
          <Runtime resid="Pane.Url" lifetime="long"/>
        </Runtimes>
        <AllFormFactors>
          <ExtensionPoint xsi:type="CustomFunctions">
            <Script>
              <SourceLocation resid="Functions.Script"/>
            </Script>
            <Page>
              <SourceLocation resid="Pane.Url"/>
            </Page>
            <Metadata>
              <SourceLocation resid="Functions.Metadata"/>
            </Metadata>
            <Namespace resid="Functions.Namespace"/>
          </ExtensionPoint>
        </AllFormFactors>
        <DesktopFormFactor>
          <GetStarted>
            <Title resid="GetStarted.Title"/>
            <Description resid="GetStarted.Description"/>
            <LearnMoreUrl resid="GetStarted.Url"/>
          </GetStarted>
          <FunctionFile resid="Pane.Url"/>
          <ExtensionPoint xsi:type="PrimaryCommandSurface">
            <OfficeTab id="${facts.ribbon.tab}">
              <Group id="Batteries.Group">
                <Label resid="Group.Label"/>
                ${icons()}
                <Control xsi:type="Button" id="Pane.Button">
                  <Label resid="Button.Label"/>
                  <Supertip>
                    <Title resid="Button.Title"/>
                    <Description resid="Button.Tip"/>
                  </Supertip>
                  ${icons()}
                  <Action xsi:type="ShowTaskpane">
                    <SourceLocation resid="Pane.Url"/>
                  </Action>
                </Control>
              </Group>
            </OfficeTab>
          </ExtensionPoint>
        </DesktopFormFactor>
      </Host>
    </Hosts>
${resources(facts)}
  </VersionOverrides>`;
}

const icons = (): string =>
  `<Icon>${[16, 32, 80].map((size) => `<bt:Image size="${size}" resid="Icon.${size}"/>`).join('')}</Icon>`;

function resources({ address, namespace, ribbon, getStarted }: ManifestFacts): string {
  const images = { 'Icon.16': 16, 'Icon.32': 32, 'Icon.80': 80 };
  const addresses = Object.fromEntries(
    Object.entries(images).map(([id, size]) => [id, `${address}/icons/icon${size}.png`]),
  );
  return `    <Resources>
      <bt:Images>
        ${defaults('Image', addresses)}
      </bt:Images>
      <bt:Urls>
        ${defaults('Url', {
          'Pane.Url': `${address}/taskpane.html`,
          'Functions.Script': `${address}/functions.js`,
          'Functions.Metadata': `${address}/functions.json`,
          'GetStarted.Url': `${address}/docs/install.html`,
        })}
      </bt:Urls>
      <bt:ShortStrings>
        ${defaults('String', {
          'Functions.Namespace': namespace,
          'Group.Label': ribbon.group,
          'Button.Label': ribbon.label,
          'Button.Title': ribbon.title,
          'GetStarted.Title': getStarted.title,
        })}
      </bt:ShortStrings>
      <bt:LongStrings>
        ${defaults('String', {
          'Button.Tip': ribbon.tip,
          'GetStarted.Description': getStarted.description,
        })}
      </bt:LongStrings>
    </Resources>`;
}
