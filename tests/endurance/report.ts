import { appendFileSync } from 'node:fs'

/** How much of a long test is run: short where nothing is asked for, as much as `npm run endurance` asks for. */
export const asked = (name: string, short: number): number => Number(process.env[name] ?? short)

/** Adds the figures of a run to the report of `npm run endurance`, where that runs it, and prints them. */
export function report(part: string, figures: Readonly<Record<string, number | string>>): void {
  console.log(`${part}: ${JSON.stringify(figures)}`)
  const path = process.env.ENDURANCE_REPORT
  if (path) appendFileSync(path, `${JSON.stringify({ part, ...figures })}\n`)
}
