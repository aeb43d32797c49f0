import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../../src/functions/index.ts'
import { number } from '../../../src/language/index.ts'
import { NONE } from '../../../src/units/index.ts'
import type { Node } from '../../../src/worksheet/engine/node.ts'
import { SheetScope } from '../../../src/worksheet/engine/sheet-scope.ts'

const scopeOf = (nodes: Map<string, Node>) => {
  const sheet = new SheetScope(() => nodes)
  return { sheet, scope: (except?: string) => sheet.scope(LIBRARY, false, except) }
}
const typed = (): Node => ({ type: number(NONE) }) as Node
const nodesOf = (names: readonly string[]) => new Map(names.map((name) => [name, typed()]))

describe('what the formulas of a sheet may refer to', () => {
  test('are its cells by name, without the one that is written in', () => {
    const { scope } = scopeOf(nodesOf(['focal', 'width', 'height']))
    expect([...scope('width').names()]).toEqual(['focal', 'height'])
    expect([...scope().names()]).toEqual(['focal', 'width', 'height'])
  })

  test('have their type, or none yet; a name that is no cell’s has none', () => {
    const { scope } = scopeOf(new Map([...nodesOf(['focal']), ['odd', { type: undefined } as Node]]))
    expect(['focal', 'odd', 'nothing'].map((name) => scope().typeOf(name))).toEqual([
      number(NONE),
      'unknown',
      undefined,
    ])
  })

  test('are found by a misspelt name as they are now', () => {
    const nodes = nodesOf(['focal', 'width'])
    const { sheet, scope } = scopeOf(nodes)
    expect([scope().nearestName?.('focla'), scope().nearestName?.('zzzzzz')]).toEqual(['focal', undefined])
    const { edition } = sheet
    nodes.delete('focal')
    nodes.set('fokla', typed())
    sheet.changed()
    expect(sheet.edition).toBe(edition + 1)
    expect(scope().nearestName?.('focla')).toBe('fokla')
  })

  test('are looked for by at most a hundred misspelt names, where they are many', () => {
    const names = (count: number) => Array.from({ length: count }, (_, i) => `cell_${i}_of_many`)
    const found = (count: number) => {
      const { scope } = scopeOf(nodesOf(names(count)))
      return Array.from({ length: 102 }, (_, i) => scope().nearestName?.(`cell_${i}_of_manx`)).filter(
        (name) => name !== undefined,
      ).length
    }
    expect([found(1000), found(1001)]).toEqual([102, 100])
  })
})
