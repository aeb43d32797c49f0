import { describe, expect, test } from 'vitest'
import {
  readStudioSet,
  STUDIO_FORMAT,
  StudioTemplates,
  studioSetIn,
  writeStudioSet,
} from '../../src/kit/studio-templates.ts'
import { openMemory } from '../../src/storage/store/memory-store.ts'
import type { Worksheet } from '../../src/worksheet/index.ts'
import { SHEET } from '../storage/sheets.ts'

const WITH_FUNCTION: Worksheet = {
  ...SHEET,
  title: 'With a function',
  cells: [
    ...SHEET.cells,
    {
      kind: 'function',
      id: 'f',
      name: 'twice',
      arguments: [{ name: 'x' }],
      formula: '2 * x',
      examples: [{ formula: 'twice(2)', gives: '4' }],
    },
  ],
}
const LENS = { id: 'l', sort: 'lens' as const, name: 'Macro lens', figures: { focal: '60 mm' } }

describe('the templates of a studio', () => {
  test('are saved, found, replaced under the same title, and removed', async () => {
    const templates = new StudioTemplates(openMemory(undefined))
    expect(await templates.list()).toEqual([])
    await templates.put({ ...SHEET, origin: { sheet: 'a', at: 1 } } as Worksheet)
    const [first] = await templates.put(WITH_FUNCTION)
    expect(await templates.find(first?.id ?? '')).toEqual(SHEET)
    const again = await templates.put({ ...SHEET, job: 'Changed' })
    expect(again.map(({ worksheet }) => worksheet.title)).toEqual([SHEET.title, WITH_FUNCTION.title])
    expect((await templates.find(first?.id ?? ''))?.job).toBe('Changed')
    expect((await templates.remove(first?.id ?? '')).map(({ worksheet }) => worksheet)).toEqual([WITH_FUNCTION])
  })

  test('that cannot be read are left as they are', async () => {
    const store = openMemory(undefined)
    await store.saveSetting('templates', [{ id: 'x', worksheet: { format: 'other' } }])
    expect(await new StudioTemplates(store).list()).toEqual([])
    expect(await new StudioTemplates(store).put(SHEET)).toMatchObject([{ worksheet: SHEET }])
    expect(await store.setting('templates')).toContainEqual({ id: 'x', worksheet: { format: 'other' } })
    await store.saveSetting('templates', { of: 'a later version' })
    await expect(new StudioTemplates(store).put(SHEET)).rejects.toThrow(/newer version/)
  })
})

describe('the set of a studio', () => {
  test('is one file with templates, their functions and the kit', async () => {
    const text = writeStudioSet({ templates: [SHEET, WITH_FUNCTION], kit: [LENS] })
    expect(await studioSetIn(new Blob([text]))).toEqual({ templates: [SHEET, WITH_FUNCTION], kit: [LENS] })
    expect(await studioSetIn(new Blob([JSON.stringify(SHEET)]))).toBeUndefined()
  })

  test.each([
    ['{', /not JSON/],
    ['{}', /not a file of a studio/],
    [`{"format":"${STUDIO_FORMAT}","version":2}`, /newer version/],
    [`{"format":"${STUDIO_FORMAT}","version":1,"templates":{}}`, /templates/],
    [`{"format":"${STUDIO_FORMAT}","version":1,"templates":[{}]}`, /templates › 1/],
    [`{"format":"${STUDIO_FORMAT}","version":1,"templates":[],"kit":[1]}`, /kit/],
  ])('%s is refused in words', (text, why) => {
    expect(() => readStudioSet(text)).toThrow(why)
  })
})
