import type { Given } from '../../worksheet/schema/document.ts'

/** A given with the value that was measured at a step, beside the value that was planned. Empty restores the planned value. */
export function measuredGiven(cell: Given, text: string): Given {
  const { from, ...rest } = cell
  const planned = plannedOf(cell) ?? (isMeasured(cell) ? undefined : { text: cell.value, ...origin(cell) })
  if (text.trim() === '') {
    if (!planned) return { ...rest, value: '' } as Given
    const { text: value, kind } = planned
    return { ...rest, value, ...(kind ? { from: { kind, text: value } } : {}) } as Given
  }
  const beside = planned && planned.text.trim() !== '' && cell.reading !== true ? { planned } : {}
  return { ...rest, value: text, from: { kind: 'measured', text, ...beside } } as Given
}

type Planned = NonNullable<NonNullable<Given['from']>['planned']>

const isMeasured = ({ from, value }: Given): boolean => from?.kind === 'measured' && from.text === value

/** Where a value comes from, for as long as it has not been replaced by typing. */
const origin = ({ from, value }: Given): Pick<Planned, 'kind'> =>
  from && from.text === value ? { kind: from.kind } : {}

/** The value that was planned before another was measured; undefined where nothing was measured. */
export const plannedOf = (cell: Given): Planned | undefined => (isMeasured(cell) ? cell.from?.planned : undefined)
