import { actOn, removedText } from '../../common/words.ts'

/** The words of the studio’s own templates on the shelf. */
export const studioWords = {
  aboutStudioTemplates: 'Each starts a new sheet, with its examples and its functions.',
  noStudioTemplates: 'There are none yet. In a sheet, press Share, then Save as a studio template.',
  saveSet: 'Save templates, functions and kit as one file',
  setSaved: 'Saved. Opened in another browser, it adds these templates and this kit.',
  removed: removedText,
  remove: 'Remove',
  act: actOn,
}
