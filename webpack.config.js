import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';
import webpack from 'webpack';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));

// Licence texts stand in a file of their own beside the script.
const MINIFY = { minify: true, target: 'es2022', legalComments: 'none' };

/** Shrinks every script: the same work takes webpack's own choice ten times as long. */
const shrinkScripts = {
  apply(compiler) {
    const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE;
    compiler.hooks.thisCompilation.tap('shrinkScripts', (compilation) => {
      compilation.hooks.processAssets.tapPromise({ name: 'shrinkScripts', stage }, async (assets) => {
        for (const name of Object.keys(assets).filter((each) => each.endsWith('.js'))) {
          const { code } = await transform(String(assets[name].source()), MINIFY);
          compilation.updateAsset(name, new webpack.sources.RawSource(code));
        }
      });
    });
  },
};

/** Puts the functions' metadata beside the script that answers them. */
const functionMetadata = {
  apply(compiler) {
    compiler.hooks.thisCompilation.tap('functionMetadata', (compilation) => {
      compilation.hooks.additionalAssets.tap('functionMetadata', () => {
        const text = readFileSync(path('functions/functions.json'), 'utf8');
        compilation.emitAsset(
          'functions.json',
          new webpack.sources.RawSource(JSON.stringify(JSON.parse(text))),
        );
      });
    });
  },
};

/** The folder of the package that a module comes from, or undefined for our own. */
const packageOf = ({ resource }) =>
  /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/.exec(resource ?? '')?.[0];

const LICENCE_FILES = ['LICENSE', 'LICENSE.md', 'LICENSE.txt', 'license', 'NOTICE'];

/** Each licence text once, under the names of the packages that come with it. */
function licenceTexts(folders) {
  const packagesOfText = new Map();
  for (const folder of [...folders].sort()) {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const files = LICENCE_FILES.map((file) => `${folder}/${file}`).filter(existsSync);
    const text = files.map((file) => readFileSync(file, 'utf8').trim()).join('\n\n');
    packagesOfText.set(text, [...(packagesOfText.get(text) ?? []), `${name} ${version}: ${license}`]);
  }
  const sections = [...packagesOfText].map(([text, packages]) => `${packages.join('\n')}\n\n${text}\n`);
  return sections.join(`\n${'-'.repeat(80)}\n\n`);
}

/** Lists what others wrote in a bundle, with the licences. */
const licences = {
  apply(compiler) {
    const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT;
    compiler.hooks.thisCompilation.tap('licences', (compilation) => {
      compilation.hooks.processAssets.tap({ name: 'licences', stage }, () => {
        const inside = (module) => [module, ...(module.modules ?? [])];
        const folders = new Set([...compilation.modules].flatMap(inside).map(packageOf).filter(Boolean));
        const source = new webpack.sources.RawSource(licenceTexts(folders));
        compilation.emitAsset(`${compiler.options.name}.licences.txt`, source);
      });
    });
  },
};

const typeScript = {
  test: /\.ts$/,
  loader: 'ts-loader',
  options: {
    // Types are checked by npm test; here they are only taken out.
    transpileOnly: true,
    compilerOptions: { noEmit: false, allowImportingTsExtensions: false },
  },
};

/** The script and the metadata that Excel loads for the cell functions; it carries nothing of the pane. */
const cellFunctions = {
  name: 'functions',
  target: 'web',
  entry: { functions: path('functions/index.ts') },
  output: { path: path('dist'), filename: '[name].js' },
  module: { rules: [typeScript] },
  plugins: [functionMetadata, licences],
  optimization: { minimizer: [shrinkScripts] },
  performance: { hints: false },
  devtool: false,
};

export default [cellFunctions];
