import { plural } from '../../units/plural.ts'

/** The sentences of the app as a whole, as users meet them. */
export const bootWords = {
  noSuchStart: 'No template has this name.',
  newerReady: 'A newer Evenfield is ready.',
  useNewer: 'Use it',
  newerElsewhere: 'Another tab uses a newer Evenfield.',
  loadNewer: 'Load it here',
  studioSetTaken: (templates: number): string =>
    templates === 0 ? '' : `${plural(templates, 'template')} of the studio came in.`,
  filesCameIn: (n: number) => `${plural(n, 'sheet')} came in.`,
  yoursUnchanged: 'Your own sheets are unchanged.',
  manyFiles: (n: number) => `You chose ${plural(n, 'file')}. Bring a sheet in from each of them?`,
  bringIn: 'Bring them in',
  cancel: 'Cancel',
}
