export const standWords = {
  settings: 'To set at the stand',
  awake: {
    held: 'The screen stays on.',
    asked: '',
    refused: 'The screen may turn off: the browser refuses to keep it on, usually because the battery is low.',
    cannot: 'The screen may turn off: this browser cannot keep it on. Set the device to stay on.',
  },
  nothingMarkedBefore: 'No figure is marked for the stand yet. In ',
  build: 'Build',
  nothingMarkedAfter: ', open a given, a result or a check and tick “Set at the stand”.',
  meanwhile: 'Until then, the results of one section:',
  sections: 'Section to show',
  beforeSections: 'Before the first section',
  nearestMark: (exactly: string): string => `nearest mark; exactly ${exactly}`,
  measured: (difference: string): string => (difference ? `measured, ${difference}` : 'measured'),
}
