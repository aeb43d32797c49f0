import { expect, test } from 'vitest'
import { HandWritten } from './hand-written.ts'
import { Hyperformula } from './hyperformula.ts'
import { MathjsUnits } from './mathjs.ts'
import { Ours, reachOf } from './ours.ts'

test('all contenders compute the same chain', () => {
  const contenders = [new Ours(), new HandWritten(), new Hyperformula(), new MathjsUnits()]
  for (const contender of contenders) contender.prepare(50)
  let expected = 100
  for (let i = 0; i < 50; i++) expected = Math.sqrt(expected ** 2 + 1.5) * 0.99
  for (const contender of contenders) {
    contender.unset()
    expect(contender.edit(100), contender.name).toBeCloseTo(expected, 9)
  }
})

test('an edit of an unset chain computes every cell', () => {
  const ours = new Ours()
  ours.prepare(5000)
  ours.unset()
  expect(reachOf(ours.sheet, '100 mm')).toBe(5001)
})

test('an edit from number to number stops where nothing changes', () => {
  const ours = new Ours()
  ours.prepare(5000)
  ours.edit(100)
  expect(reachOf(ours.sheet, '120 mm')).toBeLessThan(2500)
})
