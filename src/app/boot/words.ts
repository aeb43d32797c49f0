/** The sentences of the app as a whole, as users meet them. */
export const bootWords = {
  thisPage: 'This page',
  kit: 'Kit',
  light: 'Light',
  dim: 'Dim',
  noSuchStart: 'There is no job with this name. Choose one below.',
  newerReady: 'A newer version of Evenfield is ready.',
  useNewer: 'Use it',
  newerElsewhere: 'Another tab uses a newer version of Evenfield.',
  loadNewer: 'Load it here',
  bringIn: 'Import them',
  cancel: 'Cancel',
}
