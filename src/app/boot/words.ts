/** The sentences of the app as a whole, as users meet them. */
export const bootWords = {
  noSuchStart: 'No template has this name.',
  newerReady: 'A newer Evenfield is ready.',
  useNewer: 'Use it',
  newerElsewhere: 'Another tab uses a newer Evenfield.',
  loadNewer: 'Load it here',
  bringIn: 'Import them',
  cancel: 'Cancel',
}
