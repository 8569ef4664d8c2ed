import type { Configuration } from 'electron-builder';

/** How the app is packed; `npm run package` packs it for the system that it runs on. */
const configuration: Configuration = {
  appId: 'example.struckline.desktop',
  productName: 'Struckline',
  copyright: 'The Struckline authors, MIT licence',
  directories: { output: 'out/packed', buildResources: 'build-resources' },
  extraMetadata: { author: 'The Struckline authors', homepage: 'https://struckline.example' },
  artifactName: `\${productName}-\${version}-\${os}-\${arch}.\${ext}`,

  // The bundle holds all but one package, of which the library and the one binary of the system are taken.
  files: [
    'out/{main,preload,renderer}/**',
    'LICENSE',
    '!node_modules/**',
    'node_modules/better-sqlite3/{package.json,LICENSE}',
    'node_modules/better-sqlite3/lib/**',
    `node_modules/better-sqlite3/prebuilds/\${platform}-\${arch}.node`,
  ],
  // What is unpacked is not covered by the archive's integrity: the binary alone, which the system has to load as a file.
  asar: { smartUnpack: false },
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/*.node'],
  // That binary speaks Node-API, which is the same in every runtime: there is nothing to compile.
  npmRebuild: false,

  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    // The app makes no V8 snapshot of its own, and with the fuse Electron would look for one.
    loadBrowserProcessSpecificV8Snapshot: false,
    // Pages come from the app's own protocol, never from file://.
    grantFileProtocolExtraPrivileges: false,
  },

  // Nothing is published and nothing is asked for: the app never updates itself.
  publish: null,

  fileAssociations: [
    { ext: 'struckline', name: 'Struckline house', description: 'Struckline house', mimeType: 'application/vnd.struckline.house', role: 'Editor', rank: 'Owner' },
  ],

  win: { target: [{ target: 'nsis', arch: ['x64', 'arm64'] }] },
  // Windows takes the ending of house files from an installation for the whole machine alone.
  nsis: { oneClick: false, perMachine: true, allowToChangeInstallationDirectory: true, deleteAppDataOnUninstall: false, differentialPackage: false },

  mac: {
    target: [
      { target: 'dmg', arch: ['x64', 'arm64'] },
      { target: 'zip', arch: ['x64', 'arm64'] },
    ],
    category: 'public.app-category.productivity',
    hardenedRuntime: true,
    gatekeeperAssess: false,
    entitlements: 'build-resources/entitlements.mac.plist',
    entitlementsInherit: 'build-resources/entitlements.mac.plist',
  },
  dmg: { writeUpdateInfo: false },

  linux: {
    target: [
      { target: 'AppImage', arch: ['x64', 'arm64'] },
      { target: 'deb', arch: ['x64', 'arm64'] },
    ],
    executableName: 'struckline',
    category: 'Office',
    synopsis: 'Plans the redecoration of a whole house',
    maintainer: 'The Struckline authors <authors@struckline.example>',
  },
};

export default configuration;
