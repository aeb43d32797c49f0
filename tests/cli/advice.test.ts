import { describe, expect, it } from 'vitest'
import { evenfield } from './run.ts'

interface Report {
  readonly cells: Readonly<Record<string, { readonly in_example?: string }>>
  readonly offers: Readonly<Record<string, readonly string[]>>
  readonly checks: Readonly<Record<string, string>>
  readonly advice: Readonly<
    Record<string, { changes: Record<string, string>; text: string; passes: string[]; breaks: string[] }[]>
  >
  readonly no_advice: Readonly<Record<string, string>>
  readonly plan?: { changes: Record<string, string>; text: string; passes: string[]; breaks: string[] }
}

const computeExample = async (...more: string[]): Promise<Report> =>
  JSON.parse((await evenfield('compute', 'templates/flat-sheet.json', '--set', 'lamp_out=500', '--json', ...more)).out)
const compute = (...more: string[]): Promise<Report> => computeExample('--as-mine', ...more)

describe('compute --advice', () => {
  it('adds plans whose changes, given back by --set, make their checks pass', async () => {
    const before = await compute('--advice')
    const failing = Object.keys(before.checks).filter((name) => before.checks[name] === 'fail')
    expect(failing.length).toBeGreaterThan(1)
    for (const name of failing) expect(before.advice[name] ?? before.no_advice[name], name).toBeDefined()
    const plan = before.plan as NonNullable<Report['plan']>
    const after = await compute(
      ...Object.entries(plan.changes).flatMap(([given, text]) => ['--set', `${given}=${text}`]),
    )
    for (const name of plan.passes) expect(after.checks[name], name).toMatch(/^(pass|marginal)$/)
    expect(plan.breaks).toEqual([])
    expect(plan.text).toMatch(/^To make .+ pass: .+\.$/)
  })

  it('advises on checks that fail with the figures of an example', async () => {
    const { checks, cells, advice, no_advice: reasons, offers } = await computeExample('--advice')
    const failing = Object.keys(checks).filter((name) => cells[name]?.in_example === 'fail')
    expect(failing.length).toBeGreaterThan(1)
    for (const name of failing) {
      expect(checks[name]).toBe('waiting')
      expect(advice[name] ?? reasons[name], name).toBeDefined()
    }
    expect(offers.sharp_enough).toContain('tiles')
  })

  it('adds nothing where it is not asked for', async () => {
    expect(compute()).not.toHaveProperty('advice')
  })
})
