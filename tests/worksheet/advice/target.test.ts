import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { adviseTarget } from '../../../src/worksheet/advice/advise.ts'
import { planText } from '../../../src/worksheet/advice/plan-text.ts'
import { given, result, sheetOf } from '../make.ts'
import { openJob, typedInto } from './jobs.ts'

/** The thin lens: the object distance is f (1 + 1/m), as in any textbook of optics. */
const lens = () =>
  sheetOf([
    given('focal', '120 mm', { unit: 'mm' }),
    given('scale', '1:16.4', { unit: '1:', fixed: true }),
    given('stop', 'f/11', { unit: 'f/' }),
    result('distance', 'focal * (1 + 1 / scale)', { unit: 'mm' }),
    result('hole', 'focal / stop', { unit: 'mm' }),
  ])
const distance = (focal: number): number => focal * (1 + 16.4)

const firstFor = (id: string, target: string): { given: string; figure: number } => {
  const change = adviseTarget(lens(), id, target).plans[0]?.changes[0]
  return { given: change?.given ?? '', figure: Number.parseFloat(change?.text ?? '') }
}

test('that takes both lamps out and up is found, and what is typed gives it', () => {
  const sheet = openJob('two-lamps', {})
  const spread = sheet.named('spread')?.id ?? ''
  for (const target of [0.06, 0.07]) {
    const plan = adviseTarget(sheet, spread, `${target}`).plans[0]
    expect(plan, `${target}`).toBeDefined()
    const texts = Object.fromEntries((plan?.changes ?? []).map(({ given: name, text }) => [name, text]))
    const outcome = typedInto(sheet, texts).outcome(spread)
    const found = outcome.state === 'value' ? (outcome.value as number) : Number.NaN
    expect(Math.abs(found / target - 1)).toBeLessThanOrEqual(0.05 + 1e-9)
  }
})

describe('a target value of a result', () => {
  it('is hit by a given that has no marks, between round figures', () => {
    const { given: name, figure } = firstFor('distance', '1500 mm')
    expect(name).toBe('focal')
    expect(distance(figure)).toBeGreaterThan(1499)
    expect(distance(figure)).toBeLessThan(1501)
  })

  it('is hit wherever it lies within half and twice what is set, in as few digits as do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 239 }), (percent) => {
        const target = Math.round(distance(percent))
        const { given: name, figure } = firstFor('distance', `${target} mm`)
        fc.pre(percent !== 120)
        expect(name).toBe('focal')
        expect(Math.abs(distance(figure) / target - 1)).toBeLessThanOrEqual(0.0005)
        expect(`${figure}`.replace(/\D/g, '').length).toBeLessThanOrEqual(5)
      }),
      { numRuns: 40 },
    )
  })

  it('is named in full in the suggestion: the figure that is typed, not one rounded to fewer digits', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1050, max: 4000 }), (target) => {
        const sheet = lens()
        const plan = adviseTarget(sheet, 'distance', `${target} mm`).plans[0]
        const change = plan?.changes[0]
        fc.pre(plan !== undefined && change?.given === 'focal')
        if (plan) expect(planText(sheet, plan)).toContain(`${Number.parseFloat(change?.text ?? '')} mm`)
      }),
      { numRuns: 60 },
    )
  })

  it('leaves apertures on their marks', () => {
    for (const { changes } of adviseTarget(lens(), 'hole', '9 mm').plans)
      for (const { given: name, text } of changes)
        if (name === 'stop') expect(['f/9', 'f/10', 'f/11', 'f/13', 'f/14', 'f/16', 'f/8']).toContain(text)
  })
})
