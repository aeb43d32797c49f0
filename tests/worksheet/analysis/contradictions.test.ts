import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { type Result, Sheet, withMeasured } from '../../../src/worksheet/index.ts'
import { readTemplate } from '../../templates/open.ts'

const flat = (): Sheet => new Sheet(readTemplate('flat-sheet'), LIBRARY)
const result = (sheet: Sheet, name: string): Result => sheet.named(name) as Result
const measure = (sheet: Sheet, name: string, text: string): void =>
  sheet.apply({ do: 'replace', cell: withMeasured(result(sheet, name), text) }, { when: '2026-03-02T14:02:00Z' })
function measured(sheet: Sheet, name: string) {
  const outcome = sheet.outcome(result(sheet, name).id)
  return outcome.state === 'value' ? outcome.measured : undefined
}
function computedOf(sheet: Sheet, name: string): number {
  const outcome = sheet.outcome(result(sheet, name).id)
  return outcome.state === 'value' ? (outcome.value as number) : Number.NaN
}

describe('two measured values of one quantity', () => {
  test('contradict each other where both cannot be right, each saying what the other would make it', () => {
    const sheet = flat()
    measure(sheet, 'carriage', '960 mm')
    measure(sheet, 'ppi', '297')
    expect(measured(sheet, 'carriage')?.contradicts).toEqual([
      expect.stringMatching(
        /^contradicts Sampling.*, measured as 297 ppi, which would make this \d{3,4} mm\. Measure both/,
      ),
    ])
    expect(measured(sheet, 'ppi')?.contradicts).toEqual([
      expect.stringMatching(
        /^contradicts Set the column to, measured as 960 mm, which would make this \d{3} ppi\. Measure/,
      ),
    ])
    measure(sheet, 'carriage', '')
    expect(measured(sheet, 'ppi')?.contradicts).toBeUndefined()
    sheet.undo()
    expect(measured(sheet, 'ppi')?.contradicts).toHaveLength(1)
  })

  test('contradict each other as well where they came with the file', () => {
    const worksheet = readTemplate('flat-sheet')
    const texts: Readonly<Record<string, string>> = { carriage: '1143', ppi: '297' }
    const cells = worksheet.cells.map((cell) =>
      cell.kind === 'result' && texts[cell.name] ? { ...cell, measured: texts[cell.name] as string } : cell,
    )
    const sheet = new Sheet({ ...worksheet, cells }, LIBRARY)
    expect(measured(sheet, 'carriage')?.contradicts).toHaveLength(1)
    expect(measured(sheet, 'ppi')?.contradicts).toEqual([
      expect.stringContaining('contradicts Set the column to, measured as 1143 mm'),
    ])
  })

  test('are notified together: the view of one changes when the other is read', () => {
    const sheet = flat()
    measure(sheet, 'carriage', '960 mm')
    const seen: unknown[] = []
    sheet.watch((changed) => seen.push(changed))
    measure(sheet, 'ppi', '297')
    expect(seen).toEqual(['all'])
  })

  test('say nothing where one is older than a change of what it depends on', () => {
    const sheet = flat()
    measure(sheet, 'carriage', '960 mm')
    measure(sheet, 'ppi', '297')
    const focal = sheet.named('focal')
    if (focal?.kind !== 'given') throw new Error('There is no focal length.')
    sheet.apply({ do: 'replace', cell: { ...focal, value: '80' } })
    expect(measured(sheet, 'carriage')?.contradicts).toBeUndefined()
  })

  test('agree where both are read off one true set-up, whatever its magnification, and do not a few per cent off it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 100, max: 600 }),
        fc.integer({ min: 35, max: 120 }),
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom(1.03, 0.97),
        (width, focal, border, off) => {
          const made = readTemplate('flat-sheet')
          const typed: Record<string, string> = { original: `${width} x ${width} mm`, focal: `${focal} mm` }
          /** The same sheet with another border: what one reads if the camera was set for that. */
          const at = (text: string): Sheet => {
            const texts: Record<string, string> = { ...typed, border: text }
            return new Sheet(
              {
                ...made,
                cells: made.cells.map((cell) =>
                  cell.kind === 'given' && cell.name in texts ? { ...cell, value: texts[cell.name] as string } : cell,
                ),
              },
              LIBRARY,
            )
          }
          const truth = at(`${border} mm`)
          const sheet = at('10 mm')
          measure(sheet, 'carriage', `${1000 * computedOf(truth, 'carriage')} mm`)
          measure(sheet, 'ppi', `${0.0254 * computedOf(truth, 'ppi')} ppi`)
          expect(measured(sheet, 'carriage')?.contradicts).toBeUndefined()
          measure(sheet, 'ppi', `${off * 0.0254 * computedOf(truth, 'ppi')} ppi`)
          expect(measured(sheet, 'ppi')?.contradicts).toHaveLength(1)
        },
      ),
      { numRuns: 60 },
    )
  })
})
