import { actOn } from '../../common/words.ts'

/** The words of the sheets that were removed. */
export const removedWords = {
  list: 'Removed sheets',
  removedAt: (when: string): string => `removed ${when}`,
  restore: 'Restore',
  restored: (title: string): string => `“${title}” is back among your sheets.`,
  erase: 'Erase',
  askErase: (title: string): string => `Erase “${title}” and its revisions? This cannot be undone.`,
  erased: (title: string): string => `“${title}” is erased.`,
  doNotErase: 'Cancel',
  act: actOn,
}
