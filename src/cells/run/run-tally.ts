import { html, nothing, type TemplateResult } from 'lit'
import { ENOUGH, type Total } from '../../worksheet/run/estimate.ts'
import type { RunPlan } from '../../worksheet/run/plan.ts'
import { counted, dataText, daysText, timeText } from '../../worksheet/run/plan-text.ts'

type Line = readonly [label: string, figure: string, more?: 'sum']

const lines = (all: readonly Line[]): TemplateResult => html`
  <dl class="tally">
    ${all.map(([label, figure, more]) => html`<div class=${more ?? ''}><dt>${label}</dt><dd>${figure}</dd></div>`)}
  </dl>
`

/** A whole of the work, line by line; what comes to nothing is left out. */
export function totalLines(whole: Total): Line[] {
  const { count, setups, frames, time, setupTime, breaks, all, days, data } = whole
  const only = setupTime === 0 && breaks === 0
  return [
    ['Originals', `${count}`],
    ['Set-ups', `${setups}`],
    ['Frames', `${frames}`],
    ...(time > 0 && !only ? ([['At the originals', timeText(time)]] as Line[]) : []),
    ...(setupTime > 0 ? ([['Changing the set-up', timeText(setupTime)]] as Line[]) : []),
    ...(breaks > 0 ? ([['Breaks', timeText(breaks)]] as Line[]) : []),
    ...(all > 0
      ? ([['Time in all', `${timeText(all)}${days === undefined ? '' : `, ${daysText(days)}`}`, 'sum']] as Line[])
      : []),
    ...(data > 0 ? ([['Disk', dataText(data), 'sum']] as Line[]) : []),
  ]
}

const share = (actual: number, planned: number): string => {
  if (planned <= 0) return ''
  const percent = Math.round((actual / planned - 1) * 100)
  return percent === 0 ? ', as planned' : `, ${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'}`
}

/** What was done beside what was planned for it, and what that says of the rest. */
export function progressLines({ standing: { done, left, expected } }: RunPlan): Line[] {
  const { timed, counted: framed } = done
  const rest = [counted(left.count, 'original'), counted(left.setups, 'set-up')]
  if (left.all > 0) rest.push(timeText(left.all))
  return [
    ['Done', `${done.count} of ${done.count + left.count}`],
    ...(timed.count > 0
      ? ([
          [
            `Time taken for ${timed.count}, planned ${timeText(timed.planned)}`,
            `${timeText(timed.actual)}${share(timed.actual, timed.planned)}`,
          ],
        ] as Line[])
      : []),
    ...(framed.count > 0
      ? ([
          [
            `Frames taken for ${framed.count}, planned ${framed.planned}`,
            `${framed.actual}${share(framed.actual, framed.planned)}`,
          ],
        ] as Line[])
      : []),
    ['Left', rest.join(', ')],
    ...(expected
      ? ([
          [
            'Left at the rate so far',
            `${timeText(expected.all)}${expected.days === undefined ? '' : `, ${daysText(expected.days)}`}`,
            'sum',
          ],
        ] as Line[])
      : []),
  ]
}

/** Why there is no forecast yet. */
export const noForecast = ({ standing: { done, left, expected } }: RunPlan): string =>
  expected || left.count === 0 || (done.timed.count === 0 && done.counted.count === 0)
    ? ''
    : `The rate so far is told once ${ENOUGH} originals have their time or their frames.`

/** The foot of the plan: what it comes to, and how far it is. */
export function tally(plan: RunPlan, left: boolean): TemplateResult {
  const why = noForecast(plan)
  return html`
    <div class="group">
      <h4>${left ? 'What is left, in all' : 'In all'}</h4>
      ${lines(totalLines(plan.total))}
    </div>
    ${
      plan.standing.done.count > 0
        ? html`<div class="group">
            <h4>So far</h4>
            ${lines(progressLines(plan))}
            ${why ? html`<p class="small quiet">${why}</p>` : nothing}
          </div>`
        : nothing
    }
  `
}
