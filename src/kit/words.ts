import { plural } from '../units/plural.ts'

export const kitFileWords = {
  newerTemplates: 'The templates of the studio were saved by a newer version. Reload the page to get it.',
  tooManyTemplates: (most: number): string => `A studio has at most ${most} templates. Remove some first.`,
  setNotJson: 'This is not a file of a studio’s templates and kit: it is not JSON.',
  notASet: 'This is not a file of a studio’s templates and kit.',
  tooLarge: 'This file is too large for a kit file.',
  notJson: 'This is not a kit file: it is not JSON.',
  notKit: 'This is not a kit file. To see the format, save your kit as a file on the Kit page.',
  unreadable: (place: string, why: string): string =>
    `This kit file cannot be read${place ? ` at ${place}` : ''}: ${why}`,
  newer:
    'The kit saved in this browser was written by a newer version and cannot be read here. It was not changed. Reload the page to update.',
  added: (n: number): string => `${plural(n, 'piece')} of kit added.`,
  nothingNew: 'You already have all the kit in this file.',
  unreadableInBackup: 'The kit in this file cannot be read. The kit you have was not changed.',
  fromFile: (name: string): string => `${name}, from a file`,
}
