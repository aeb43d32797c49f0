import { html, nothing, type TemplateResult } from 'lit'
import { ENOUGH, type Total } from '../../worksheet/run/estimate.ts'
import type { RunPlan } from '../../worksheet/run/plan.ts'
import { dataText, daysText, timeText } from '../../worksheet/run/plan-text.ts'
import * as planWords from '../../worksheet/run/words.ts'
import { runWords } from './words.ts'

type Line = readonly [label: string, figure: string, more?: 'sum']

const lines = (all: readonly Line[]): TemplateResult => html`
  <dl class="tally">
    ${all.map(([label, figure, more]) => html`<div class=${more ?? ''}><dt>${label}</dt><dd>${figure}</dd></div>`)}
  </dl>
`

/** The total of the work, line by line, without lines that are zero. */
export function totalLines(whole: Total): Line[] {
  const { count, setups, frames, time, setupTime, breaks, all, days, data } = whole
  const only = setupTime === 0 && breaks === 0
  return [
    [runWords.originals, `${count}`],
    [runWords.setUps, `${setups}`],
    [runWords.frames, `${frames}`],
    ...(time > 0 && !only ? ([[runWords.atOriginals, timeText(time)]] as Line[]) : []),
    ...(setupTime > 0 ? ([[runWords.changingSetUp, timeText(setupTime)]] as Line[]) : []),
    ...(breaks > 0 ? ([[runWords.breaks, timeText(breaks)]] as Line[]) : []),
    ...(all > 0
      ? ([[runWords.totalTime, `${timeText(all)}${days === undefined ? '' : `, ${daysText(days)}`}`, 'sum']] as Line[])
      : []),
    ...(data > 0 ? ([[runWords.storage, dataText(data), 'sum']] as Line[]) : []),
  ]
}

const share = (actual: number, planned: number): string => {
  if (planned <= 0) return ''
  const percent = Math.round((actual / planned - 1) * 100)
  return percent === 0
    ? runWords.asPlanned
    : percent > 0
      ? runWords.morePercent(percent)
      : runWords.lessPercent(-percent)
}

/** The progress compared with the plan, and the forecast for the rest. */
export function progressLines({ progress: { done, left, expected } }: RunPlan): Line[] {
  const { timed, counted: framed } = done
  const rest = [planWords.originals(left.count), planWords.setUps(left.setups)]
  if (left.all > 0) rest.push(timeText(left.all))
  return [
    [runWords.doneLabel, runWords.doneOf(done.count, done.count + left.count)],
    ...(timed.count > 0
      ? ([
          [
            runWords.timeTaken(timed.count, timeText(timed.planned)),
            `${timeText(timed.actual)}${share(timed.actual, timed.planned)}`,
          ],
        ] as Line[])
      : []),
    ...(framed.count > 0
      ? ([
          [
            runWords.framesTaken(framed.count, framed.planned),
            `${framed.actual}${share(framed.actual, framed.planned)}`,
          ],
        ] as Line[])
      : []),
    [runWords.left, rest.join(', ')],
    ...(expected
      ? ([
          [
            runWords.leftAtRate,
            `${timeText(expected.all)}${expected.days === undefined ? '' : `, ${daysText(expected.days)}`}`,
            'sum',
          ],
        ] as Line[])
      : []),
  ]
}

/** Why there is no forecast yet. */
const noForecast = ({ progress: { done, left, expected } }: RunPlan): string =>
  expected || left.count === 0 || (done.timed.count === 0 && done.counted.count === 0) ? '' : runWords.noRate(ENOUGH)

/** The foot of the plan: its total and the progress. */
export function tally(plan: RunPlan, left: boolean): TemplateResult {
  const why = noForecast(plan)
  return html`
    <div class="group">
      <h4>${left ? runWords.totalLeft : runWords.total}</h4>
      ${lines(totalLines(plan.total))}
    </div>
    ${
      plan.progress.done.count > 0
        ? html`<div class="group">
            <h4>${runWords.soFar}</h4>
            ${lines(progressLines(plan))}
            ${why ? html`<p class="small quiet">${why}</p>` : nothing}
          </div>`
        : nothing
    }
  `
}
