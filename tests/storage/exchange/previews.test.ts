import { expect, test } from 'vitest'
import { backupText, mergeBackup } from '../../../src/storage/exchange/backup.ts'
import { fromLink, toLink } from '../../../src/storage/exchange/link.ts'
import { withoutPreviews } from '../../../src/storage/exchange/previews.ts'
import { openMemory } from '../../../src/storage/store/memory-store.ts'
import {
  FORMAT,
  type Frame,
  readDocument,
  VERSION,
  type Worksheet,
  writeDocument,
} from '../../../src/worksheet/index.ts'

const IMAGE = 'data:image/jpeg;base64,SECRET'
const sheetWith = (travels?: boolean): Worksheet => ({
  format: FORMAT,
  version: VERSION,
  title: 'A card',
  cells: [
    {
      kind: 'frame',
      id: 'f',
      name: 'card',
      picture: {
        name: 'card.tif',
        size: 1,
        digest: 'ab',
        pixels: { width: 9, height: 9, bits: 8, channels: 1, encoding: 'sRGB' },
        taken: null,
        preview: { image: IMAGE, ...(travels === undefined ? {} : { travels }) },
      },
    },
  ],
})
const imageIn = (sheet: Worksheet): string | undefined => (sheet.cells[0] as Frame).picture?.preview?.image

test('a small copy is saved in the document', () => {
  expect(imageIn(readDocument(writeDocument(sheetWith())))).toBe(IMAGE)
})

test.each([
  [undefined, undefined],
  [false, undefined],
  [true, IMAGE],
])('it leaves in a link, file or backup only where that was chosen: %s', async (travels, image) => {
  expect(imageIn(await fromLink(await toLink(sheetWith(travels))))).toBe(image)
  expect(imageIn(withoutPreviews(sheetWith(travels)))).toBe(image)
  const store = openMemory(undefined)
  await store.save('a', sheetWith(travels))
  const { text } = await backupText(store, true)
  expect(text.includes('SECRET')).toBe(image !== undefined)
  // A backup brought back where it was made finds the sheet there already.
  expect(await mergeBackup(store, text)).toMatchObject({ same: 1, added: 0, copied: 0 })
})

test('what is no sheet, or none of this version, stays as it is', () => {
  for (const data of [undefined, null, 3, 'text', [], {}, { cells: 'none' }, { cells: [null, 3, { kind: 'frame' }] }])
    expect(withoutPreviews(data)).toEqual(data)
})
