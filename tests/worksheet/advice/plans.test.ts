import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { adviseSheet, passes, statesOf } from '../../../src/worksheet/advice/advise.ts'
import { levelOf } from '../../../src/worksheet/advice/choices.ts'
import type { Plan, SheetAdvice } from '../../../src/worksheet/advice/plan.ts'
import { consequenceText, noPlanText, planText, wholePlanText } from '../../../src/worksheet/advice/plan-text.ts'
import type { FullSheet } from '../../../src/worksheet/renaming/full-sheet.ts'
import { asked, report } from '../../endurance/report.ts'
import { check, given, result, sheetOf } from '../make.ts'
import { JOBS, jobWith, openJob, typedInto } from './jobs.ts'

/** Jobs for each template; thousands under `npm run endurance`. */
const RUNS = Math.ceil(asked('ADVICE_JOBS', 20 * JOBS.length) / JOBS.length)
const SEED = process.env.ADVICE_SEED === undefined ? {} : { seed: Number(process.env.ADVICE_SEED) }

const textsIn = (changes: Plan['changes']): Record<string, string> =>
  Object.fromEntries(changes.map(({ given: name, text }) => [name, text]))
const textsOf = ({ changes }: Plan): Record<string, string> => textsIn(changes)

/** Whether a check compares two quantities and nothing else. */
function hasFigure(sheet: FullSheet, name: string): boolean {
  const cell = sheet.named(name)
  return cell?.kind === 'check' && /[<>]/.test(cell.condition) && !/ (and|or) |not |"|!=/.test(cell.condition)
}

let tried = 0
let plansTyped = 0
afterAll(() => report('advice', { seed: Number(process.env.ADVICE_SEED ?? 0), jobs: tried, plans_typed: plansTyped }))

describe('plans by kit', () => {
  const lens = (name: string, focal: string) => ({ sort: 'lens', name, figures: { focal } }) as const
  const sheet = sheetOf([
    {
      kind: 'given',
      id: 'lens',
      name: 'lens',
      label: 'Lens',
      entry: 'kit',
      sort: 'lens',
      value: '60 mm lens',
      piece: { focal: '60 mm' },
      fills: { focal: 'focal' },
    },
    given('focal', '60', { unit: 'mm' }),
    check('far', 'focal * 13 >= 1000 mm'),
  ])

  it('offer whole pieces, named without the figures they fill in', () => {
    const { checks } = adviseSheet(sheet, [
      lens('50 mm lens', '50 mm'),
      lens('60 mm lens', '60 mm'),
      lens('90 mm lens', '90 mm'),
    ])
    const plans = checks.get('far')?.plans ?? []
    expect(plans.map((plan) => planText(sheet, plan))).toEqual(['Choose 90 mm lens as Lens.'])
    expect(plans.map(textsOf)).toEqual([{ lens: '90 mm lens', focal: '90 mm' }])
  })

  it('have none where no piece of the kit would do', () => {
    const { checks } = adviseSheet(sheet, [lens('50 mm lens', '50 mm'), lens('70 mm lens', '70 mm')])
    expect(checks.get('far')?.plans).toEqual([])
  })
})

// Some jobs solve for a field of light at every trial.
describe.each(JOBS)('plans for %s', { timeout: 7_200_000 }, (job) => {
  it('make their checks pass when typed, break nothing they do not name, and end within three presses', () => {
    fc.assert(
      fc.property(jobWith(job), (texts) => {
        const sheet = openJob(job, texts)
        const before = statesOf(sheet)
        const advice = adviseSheet(sheet)
        const { checks, plan } = advice
        const all = [...[...checks].flatMap(([, { plans }]) => plans), ...(plan ? [plan] : [])]
        tried++
        plansTyped += all.length
        for (const one of all) {
          const after = statesOf(typedInto(sheet, textsOf(one)))
          for (const name of one.passes)
            expect(passes(after.get(name)), `${name} by ${JSON.stringify(textsOf(one))}`).toBe(true)
          const broken = [...before.keys()].filter((name) => passes(before.get(name)) && !passes(after.get(name)))
          expect(broken).toEqual([...one.breaks])
          const lessSure = [...before.keys()].filter(
            (name) => before.get(name) === 'pass' && after.get(name) === 'marginal',
          )
          expect(one.marginal).toEqual(expect.arrayContaining(lessSure))
          expect(one.changes.length).toBeGreaterThan(0)
          expect(one.changes.every(({ before: now, text }) => now !== text)).toBe(true)
          for (const { given: name } of one.changes) {
            const cell = sheet.named(name)
            expect(cell?.kind === 'given' && levelOf(cell), name).toBeTruthy()
          }
          for (const text of [planText(sheet, one), wholePlanText(sheet, one)])
            expect(text).not.toMatch(/undefined|NaN|\{/)
          expect(consequenceText(sheet, one)).not.toMatch(/undefined/)
        }
        for (const [name, { plans, none }] of checks) {
          const changed = plans.map(({ changes }) => changes.map(({ given: one }) => one).join())
          expect(new Set(changed).size, `${name}: ${changed}`).toBe(changed.length)
          if (none) {
            expect(plans).toEqual([])
            const reason = noPlanText(sheet, none)
            expect(reason).not.toMatch(/undefined|NaN|\{/)
            // How near it comes, and what limits it.
            const short = none.short ?? none.againstShort
            if (hasFigure(sheet, name)) expect(short, `${name}: ${reason}`).toBeDefined()
            expect(none.limits.length + none.decisions.length, `${name}: ${reason}`).toBeGreaterThan(0)
            for (const decision of none.decisions) {
              const decided = statesOf(typedInto(sheet, { ...textsIn(none.nearest), [decision.given]: decision.text }))
              const alone = statesOf(typedInto(sheet, { [decision.given]: decision.text }))
              expect(passes(decided.get(name)) || passes(alone.get(name)), `${name}: ${reason}`).toBe(true)
              // The original is what it is, and nobody needs a smaller camera or table.
              expect(decision.given).not.toBe('original')
              const sides = (text: string): number => Number.parseFloat(text)
              if (/x/.test(decision.text)) expect(sides(decision.text)).toBeGreaterThan(sides(decision.before))
            }
          }
        }
        pressAgainAndAgain(sheet, advice)
      }),
      { numRuns: RUNS, ...SEED },
    )
  })

  it('are the same for the same sheet', () => {
    fc.assert(
      fc.property(jobWith(job), (texts) => {
        expect(adviseSheet(openJob(job, texts))).toEqual(adviseSheet(openJob(job, texts)))
      }),
      { numRuns: 1 },
    )
  })
})

/** Takes the first suggestion until there is none: within three presses, each with fewer checks that fail. */
function pressAgainAndAgain(from: FullSheet, first: SheetAdvice): void {
  let sheet = from
  let advised = first
  for (let presses = 0; ; presses++) {
    const pressed = advised.plan ?? failing(sheet).flatMap((name) => advised.checks.get(name)?.plans[0] ?? [])[0]
    if (!pressed) return
    expect(presses, 'presses').toBeLessThan(3)
    const before = failing(sheet)
    sheet = typedInto(sheet, textsOf(pressed))
    expect(failing(sheet).length).toBeLessThan(before.length)
    advised = adviseSheet(sheet)
  }
}

const failing = (sheet: ReturnType<typeof openJob>): string[] =>
  [...statesOf(sheet)].flatMap(([name, state]) => (state === 'fail' ? [name] : []))

describe('a plan', () => {
  const free = (least: number, most: number, step: number) => ({ change: 'freely' as const, least, most, step })

  it('is as short as any on the marks: brute force finds no shorter one', () => {
    const limits = fc.record({
      a: fc.integer({ min: 1, max: 9 }),
      b: fc.integer({ min: 1, max: 9 }),
      sum: fc.integer({ min: 2, max: 20 }),
      most: fc.integer({ min: 1, max: 10 }),
    })
    fc.assert(
      fc.property(limits, ({ a, b, sum, most }) => {
        const sheet = sheetOf([
          given('a', String(a), { advice: free(1, 10, 1) }),
          given('b', String(b), { advice: free(1, 10, 1) }),
          result('total', 'a + b'),
          check('enough', `total >= ${sum}`),
          check('not_too_much', `a <= ${most}`),
        ])
        const before = statesOf(sheet)
        const found = adviseSheet(sheet)
          .checks.get('enough')
          ?.plans.find(({ breaks }) => breaks.length === 0)
        if (before.get('enough') !== 'fail') return
        const shortest = Math.min(
          ...[...Array(100).keys()].flatMap((i) => {
            const [x, y] = [1 + (i % 10), 1 + Math.floor(i / 10)]
            const isBroken = a <= most && x > most
            return x + y >= sum && !isBroken ? [(x === a ? 0 : 1) + (y === b ? 0 : 1)] : []
          }),
        )
        expect(found?.changes.length ?? Number.POSITIVE_INFINITY).toBe(shortest)
      }),
      { numRuns: 60 },
    )
  })

  it('changes only what may be changed', () => {
    const sheet = sheetOf([
      given('reach', '1000', { unit: 'mm', advice: { change: 'never' } }),
      given('height', '1200', { unit: 'mm', advice: free(100, 3000, 10) }),
      check('reaches', 'height <= reach', { margin: '0 %' }),
    ])
    const plan = adviseSheet(sheet).checks.get('reaches')?.plans[0]
    expect(plan?.changes).toEqual([{ given: 'height', before: '1200', text: '1000' }])
  })

  it('says how near it comes and what would have to be otherwise', () => {
    const sheet = sheetOf([
      given('reach', '1000', { unit: 'mm', label: 'Column reach', advice: { change: 'never' } }),
      given('height', '1200', { unit: 'mm', label: 'Height', advice: free(1100, 3000, 10) }),
      check('reaches', 'height <= reach', { margin: '0 %' }),
    ])
    const advice = adviseSheet(sheet).checks.get('reaches')
    expect(advice?.plans).toEqual([])
    expect(advice?.none && noPlanText(sheet, advice.none)).toBe(
      'Not within reach. The nearest is 100 mm over its limit of 1000 mm: reduce Height from 1200 mm to 1100 mm. What limits it: Column reach 1000 mm.',
    )
  })

  it('for measured values says to change the settings and read again', () => {
    const sheet = sheetOf([
      given('out', '500', { unit: 'mm', label: 'Lamps out', advice: free(100, 3000, 10) }),
      result('spread', '100 mm / out', { measured: '0.5', unit: '1' }),
      check('even', 'spread <= 0.1'),
    ])
    const advice = adviseSheet(sheet).checks.get('even')
    expect(advice?.plans).toEqual([])
    expect(advice?.none && noPlanText(sheet, advice.none)).toMatch(
      /^This check uses measured values: change Lamps out, then measure again\./,
    )
  })

  it('moves what always moves together as one', () => {
    const sheet = sheetOf([
      given('left_out', '500', {
        unit: 'mm',
        label: 'Both lamps',
        advice: { ...free(100, 3000, 10), with: 'right_out' },
      }),
      given('right_out', '500', { unit: 'mm', advice: free(100, 3000, 10) }),
      check('far', 'min(left_out, right_out) >= 800 mm', { margin: '0 %' }),
    ])
    const plan = adviseSheet(sheet).checks.get('far')?.plans[0] as Plan
    expect(textsOf(plan)).toEqual({ left_out: '800', right_out: '800' })
    expect(planText(sheet, plan)).toBe('Increase Both lamps from 500 mm to 800 mm.')
  })

  it('of a cell of the user is an agreement, between half and twice what it is', () => {
    const sheet = sheetOf([
      given('mine', '10', { unit: 'mm' }),
      check('large', 'mine >= 18 mm'),
      check('huge', 'mine >= 30 mm'),
    ])
    const { checks } = adviseSheet(sheet)
    expect(checks.get('large')?.plans[0]?.level).toBe('agreement')
    expect(checks.get('huge')?.plans).toEqual([])
  })
})
