/** Chromium's path: Debian's, or the one named in CHROMIUM. */
export const CHROMIUM = process.env.CHROMIUM ?? '/usr/bin/chromium'

/** Pages of Chromium's own that each window loads for its address bar. No test sees one, and they take longer than most tests. */
const ADDRESS_BAR = ['AimEnabled', 'WebUIOmniboxAimPopup', 'WebUIOmniboxPopup']

/** What Playwright switches off, and would not where features are named beside its own. */
const LEFT_OUT_BY_PLAYWRIGHT = [
  'AvoidCorsURLLoaderRestartOnRedirect',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
]

/** What all tests and measurements start Chromium with. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${[...ADDRESS_BAR, ...LEFT_OUT_BY_PLAYWRIGHT].join()}`,
]
