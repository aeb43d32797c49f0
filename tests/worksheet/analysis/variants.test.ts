import { describe, expect, it, test } from 'vitest'
import { variantsTable } from '../../../src/worksheet/analysis/variants-table.ts'
import type { Variants } from '../../../src/worksheet/index.ts'
import { check, given, result, seen, sheetOf } from '../make.ts'

const variants = (sets: Variants['sets'], results: string[]): Variants =>
  ({ kind: 'variants', id: 'v', sets, results }) as Variants

const sheet = () =>
  sheetOf([
    given('focal', '55', { unit: 'mm', label: 'Focal length' }),
    given('magnification', '1:4', { unit: '1:' }),
    given('original', '420 x 297', { unit: 'mm', entry: 'size' }),
    given('side', 'left', { entry: 'choice', options: ['left', 'right'] }),
    result('distance', 'focal * (1 + 1 / magnification)', { unit: 'mm', label: 'Distance' }),
    result('twice', '2 * distance', { unit: 'mm' }),
    result('area', 'original.width * original.height', { unit: 'm^2' }),
    result('where', 'when(side = "left", "to the left", "to the right")'),
    check('near', 'distance <= 300 mm'),
    given('else', '1'),
    result('broken', 'else + 1 mm'),
  ])

describe('variants', () => {
  it('puts results of several sets of givens beside the sheet as it is', () => {
    const one = sheet()
    const { titles, compared } = variantsTable(
      one,
      variants(
        [
          { title: '90 mm', values: { focal: '90' } },
          { title: ' ', values: { focal: '55', magnification: '1:9' } },
        ],
        ['distance', 'twice', 'near'],
      ),
    )
    expect(titles).toEqual(['90 mm', 'Variant 2'])
    const [distance, twice, near] = compared
    expect(distance?.present.shown).toBe('275 mm')
    expect(distance?.sets.map(({ shown, difference }) => [shown, difference])).toEqual([
      ['450 mm', '175 mm over'],
      ['550 mm', '275 mm over'],
    ])
    expect(twice?.sets.map(({ shown }) => shown)).toEqual(['900 mm', '1100 mm'])
    expect([near?.present.state, ...(near?.sets.map(({ state }) => state) ?? [])]).toEqual(['marginal', 'fail', 'fail'])
    expect(near?.sets.every(({ differs }) => differs)).toBe(true)
    expect(seen(one, 'distance')).toBe('275 mm')
  })

  it('computes with functions of the sheet', () => {
    const one = sheetOf([
      { kind: 'function', id: 'f', name: 'twice', arguments: [{ name: 'a', unit: 'mm' }], formula: '2 * a' },
      given('focal', '55', { unit: 'mm' }),
      result('double', 'twice(focal)', { unit: 'mm' }),
    ])
    const { compared } = variantsTable(one, variants([{ title: '', values: { focal: '90' } }], ['double']))
    expect(compared[0]?.sets[0]?.shown).toBe('180 mm')
  })

  it('marks nothing where a set gives the same', () => {
    const { compared } = variantsTable(
      sheet(),
      variants([{ title: 'same', values: { focal: '5.5 cm' } }], ['distance']),
    )
    expect(compared[0]?.sets[0]).toMatchObject({ shown: '275 mm', differs: false, difference: '' })
  })

  it('takes sizes and choices too', () => {
    const { varied, compared } = variantsTable(
      sheet(),
      variants([{ title: 'other', values: { original: '1000 x 500', side: 'right' } }], ['area', 'where']),
    )
    expect(varied.map(({ name, present, texts }) => [name, present, texts[0]])).toEqual([
      ['original', '420 × 297 mm', '1000 x 500'],
      ['side', 'left', 'right'],
    ])
    expect(compared.map(({ sets }) => sets[0]?.shown)).toEqual(['0.5 m²', 'to the right'])
  })

  it('says what is wrong with a value, in its set alone', () => {
    const { varied, compared } = variantsTable(
      sheet(),
      variants(
        [
          { title: 'a', values: { focal: 'rubbish' } },
          { title: 'b', values: { focal: '60', gone: '1' } },
        ],
        ['distance', 'missing', 'broken'],
      ),
    )
    expect(varied[0]?.wrong[0]).toBeTruthy()
    expect(varied[0]?.wrong[1]).toBeUndefined()
    expect(varied[1]?.wrong[1]).toContain('no cell “gone”')
    expect(compared[0]?.sets[0]).toMatchObject({ shown: '–' })
    expect(compared[0]?.sets[1]).toMatchObject({ shown: '300 mm' })
    expect(compared[1]?.present.why).toContain('no cell “missing”')
    expect(compared[2]?.present.why).toBeTruthy()
  })

  it('an empty value waits', () => {
    const { compared } = variantsTable(sheet(), variants([{ title: 'a', values: { focal: '' } }], ['distance']))
    expect(compared[0]?.sets[0]).toMatchObject({ shown: '–', why: 'needs Focal length' })
  })
})

test('a given may have the name of what every object has', () => {
  const names = ['constructor', 'toString', 'valueOf']
  const cells = names.flatMap((name) => [given(name, '2 mm'), result(`twice_${name}`, `2 * ${name}`)])
  const variants = {
    kind: 'variants' as const,
    id: 'v',
    sets: names.map((name) => ({ title: name, values: { [name]: '5 mm' } })),
    results: names.map((name) => `twice_${name}`),
  }
  const { compared } = variantsTable(sheetOf([...cells, variants]), variants)
  expect(compared.map(({ sets }) => sets.map(({ shown }) => shown))).toEqual([
    ['10 mm', '4 mm', '4 mm'],
    ['4 mm', '10 mm', '4 mm'],
    ['4 mm', '4 mm', '10 mm'],
  ])
})
