import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';
import MiniCssExtractPlugin from 'mini-css-extract-plugin';
import webpack from 'webpack';
import { isMicrosofts, MICROSOFTS, officeScript } from './webpack.office.js';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));

// Licence texts stand in a file of their own beside the script.
const MINIFY = { minify: true, target: 'es2022', legalComments: 'none' };

/** Shrinks every script and style sheet: the same work takes webpack's own choice ten times as long. */
const shrink = {
  apply(compiler) {
    const stage = webpack.Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE;
    compiler.hooks.thisCompilation.tap('shrink', (compilation) => {
      compilation.hooks.processAssets.tapPromise({ name: 'shrink', stage }, async (assets) => {
        const kept = compilation.getCache('shrink');
        const shrinkOne = async (name) => {
          const loader = name.endsWith('.css') ? 'css' : 'js';
          const tag = kept.getLazyHashedEtag(assets[name]);
          const small = await kept.providePromise(name, tag, async () => {
            const { code } = await transform(String(assets[name].source()), { ...MINIFY, loader });
            return new webpack.sources.RawSource(code);
          });
          compilation.updateAsset(name, small);
        };
        await Promise.all(
          Object.keys(assets)
            .filter((name) => /\.(js|css)$/.test(name) && !isMicrosofts(name))
            .map(shrinkOne),
        );
      });
    });
  },
};

/** Puts files beside the scripts as they are, or as a change of their text makes them. */
const filesBeside = (sourceOf, change = (bytes) => bytes) => ({
  apply(compiler) {
    compiler.hooks.thisCompilation.tap('filesBeside', (compilation) => {
      compilation.hooks.additionalAssets.tap('filesBeside', () => {
        for (const [name, source] of Object.entries(sourceOf)) {
          const bytes = readFileSync(path(source));
          compilation.fileDependencies.add(path(source));
          compilation.emitAsset(name, new webpack.sources.RawSource(change(bytes)));
        }
      });
    });
  },
});

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

/** What a package has compiled into it without its licence's text; the text is the one of another package. */
const COMPILED_IN = {
  'zxing-wasm': ['zxing-cpp (compiled into zxing-wasm): Apache-2.0', 'node_modules/typescript/LICENSE.txt'],
};

/** Each licence text once, under the names of the packages that come with it. */
function licenceTexts(folders) {
  const packagesOfText = new Map();
  const add = (text, line) => packagesOfText.set(text, [...(packagesOfText.get(text) ?? []), line]);
  for (const folder of [...folders].sort()) {
    const { name, version, license } = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'));
    const files = LICENCE_FILES.map((file) => `${folder}/${file}`).filter(existsSync);
    const text = files.map((file) => readFileSync(file, 'utf8').trim()).join('\n\n');
    // A package whose description names no licence has it in its text only.
    add(text, `${name} ${version}: ${license ?? 'by the text below'}`);
    const [inside, textOfInside] = COMPILED_IN[name] ?? [];
    if (inside !== undefined) add(readFileSync(path(textOfInside), 'utf8').trim(), inside);
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

/** The core and the cell functions do nothing when they are loaded: what nobody uses of them stays out. */
const pureRooms = { include: [path('src'), path('functions')], sideEffects: false };

const typeScript = {
  test: /\.tsx?$/,
  loader: 'ts-loader',
  options: {
    // Types are checked by npm test; here they are only taken out.
    transpileOnly: true,
    // Else the settings nearest to the first file that is built count for all: of the core, which knows no JSX.
    configFile: path('tsconfig.json'),
    compilerOptions: { noEmit: false, allowImportingTsExtensions: false },
  },
};

/** The script and the metadata that Excel loads for the cell functions; it carries nothing of the pane. */
const cellFunctions = {
  name: 'functions',
  target: 'web',
  entry: { functions: path('functions/index.ts') },
  output: { path: path('dist'), filename: '[name].js' },
  module: { rules: [typeScript, pureRooms] },
  plugins: [functionMetadata, licences],
  optimization: { minimizer: [shrink] },
  performance: { hints: false },
  devtool: false,
};

/** Hyphenation of 76 languages, which a sheet never asks for: English stays. */
const noHyphenation = new webpack.IgnorePlugin({
  checkResource: (request, context) =>
    /engine-render[\\/]lib[\\/]es$/.test(context) &&
    /^\.\/[a-z][\w-]*-[\w-]{8}\.js$/.test(request) &&
    !request.startsWith('./en-'),
});

/** What the pane is made of, wherever it stands. */
const paneParts = {
  target: 'web',
  module: {
    rules: [
      typeScript,
      pureRooms,
      {
        test: /\.css$/,
        use: [MiniCssExtractPlugin.loader, { loader: 'css-loader', options: { url: false } }],
      },
      { test: /\.wasm$/, type: 'asset/resource', generator: { filename: '[name][ext]' } },
    ],
  },
  optimization: { minimizer: [shrink] },
  performance: { hints: false },
  devtool: false,
};

const cache = (name) => ({
  type: 'filesystem',
  name,
  cacheDirectory: path('node_modules/.cache/webpack'),
  buildDependencies: { config: [path('webpack.config.js'), path('tsconfig.json')] },
});

/** The page of `npm start`: the pane beside the built-in workbook. */
const page = {
  ...paneParts,
  name: 'page',
  entry: { page: path('taskpane/page/page.tsx') },
  output: { path: path('dist'), filename: '[name].js', chunkFilename: 'page/[name].js' },
  cache: cache('page'),
  plugins: [
    filesBeside({
      'index.html': 'taskpane/page/page.html',
      'demo/norrfell-inventory.xlsx': 'docs/demo/norrfell-inventory.xlsx',
      'demo/norrfell-isvarg-may.xlsx': 'docs/demo/norrfell-isvarg-may.xlsx',
      'demo/norrfell-settings.json': 'docs/demo/norrfell-settings.json',
    }),
    new MiniCssExtractPlugin({ filename: '[name].css', chunkFilename: 'page/[name].css' }),
    noHyphenation,
    licences,
  ],
};

const ICONS = [16, 32, 64, 80, 128, 192].map((size) => `icon${size}.png`).concat('outline32.png');

/** The pane as Excel shows it; no part of the built-in workbook may come in here. */
function pane({ address, files }) {
  const withAddress = (bytes) => String(bytes).replace(MICROSOFTS, () => address);
  const icons = Object.fromEntries(ICONS.map((name) => [`icons/${name}`, `manifest/icons/${name}`]));
  return {
    ...paneParts,
    name: 'pane',
    entry: { taskpane: path('taskpane/main.ts') },
    output: { path: path('dist'), filename: '[name].js', chunkFilename: 'taskpane/[name].js' },
    cache: cache('pane'),
    plugins: [
      filesBeside({ 'taskpane.html': 'taskpane/taskpane.html' }, withAddress),
      filesBeside({ ...icons, ...files }),
      new MiniCssExtractPlugin({ filename: '[name].css', chunkFilename: 'taskpane/[name].css' }),
      licences,
    ],
  };
}

/** Everything that is built; `--env officeJs=` says where the pane finds Microsoft's library. */
export default ({ officeJs } = {}) => [cellFunctions, page, pane(officeScript(officeJs))];
