import { expect, test } from 'vitest'
import { isNamed, NAME_PATTERN } from '../../../src/worksheet/index.ts'
import { KINDS, type KindTable } from '../../../src/worksheet/kinds/index.ts'
import { isGeneratedName, nameOfLabel } from '../../../src/worksheet/table/name-of-label.ts'

test('a label makes a name that can be one', () => {
  expect(nameOfLabel('Width of the original')).toBe('width_of_the_original')
  expect(nameOfLabel('Höhe (außen), 2. Messung')).toBe('hohe_au_en_2_messung')
  for (const label of ['2nd lens', '— dash', 'a'.repeat(200), `${'x'.repeat(39)} y`])
    expect(nameOfLabel(label)).toMatch(NAME_PATTERN)
})

test('a label without letters makes none', () => {
  expect(nameOfLabel('12 × 3')).toBe('')
})

test('the name of a new cell of any kind is a generated one', () => {
  const names = Object.values(KINDS as KindTable).flatMap((kind) => {
    const cell = kind.fresh({ id: 'a', cells: [], freeName: (base) => base })
    return cell && isNamed(cell) ? [cell.name] : []
  })
  expect(names).toHaveLength(5)
  expect(names.filter((name) => !isGeneratedName(name))).toEqual([])
})

test('only names nobody chose are generated ones', () => {
  expect(['given', 'result_12', 'check_2'].every(isGeneratedName)).toBe(true)
  expect(['given_width', 'm', 'checked'].some(isGeneratedName)).toBe(false)
})
