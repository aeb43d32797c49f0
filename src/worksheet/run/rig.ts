import type { RunInput } from './inputs.ts'
import type { Rig } from './plan.ts'
import { type MissingInput, NO_ROW, type Source } from './source.ts'
import * as words from './words.ts'

/** What the sheet gives the planner; impossible figures are reported. */
export function rigOf(sources: ReadonlyMap<string, Source>, missing: MissingInput[], without: MissingInput[]): Rig {
  const refuse = (input: RunInput, why: string): undefined => {
    ;(input.needed ? missing : without).push({ input, why })
    return undefined
  }
  const figure = (name: string, least: 'any' | 'none under' | 'above' = 'none under'): number | undefined => {
    const source = sources.get(name)
    const value = source?.read(NO_ROW) as number | undefined
    if (!source || value === undefined || least === 'any') return value
    if (least === 'above' ? value > 0 : value >= 0) return value
    return refuse(source.input, least === 'above' ? words.moreThanZero : words.notBelowZero)
  }
  const figures = (name: string): readonly number[] => {
    const source = sources.get(name)
    if (!source) return []
    const values = [source.read(NO_ROW) as number | readonly number[]].flat()
    if (values.every((one) => one > 0)) return values
    refuse(source.input, words.eachMoreThanZero)
    return []
  }
  const focal = figure('focal', 'above')
  const column = ['sensor_to_carriage', 'column_least', 'column_greatest'].some((name) => sources.has(name))
  return {
    sensor: { width: figure('sensor_width', 'above') ?? 0, height: figure('sensor_height', 'above') ?? 0 },
    pitch: figure('pitch', 'above') ?? 0,
    lens:
      focal === undefined
        ? undefined
        : {
            focal,
            greatest: figure('lens_greatest', 'above'),
            gap: figure('principal_gap', 'any') ?? 0,
            tubes: figures('tubes'),
            closeups: figures('closeups'),
            spacing: figure('closeup_spacing') ?? 0,
            separation: figure('closeup_inset', 'any') ?? 0,
          },
    column: column
      ? {
          offset: figure('sensor_to_carriage', 'any') ?? 0,
          least: figure('column_least', 'any'),
          most: figure('column_greatest', 'any'),
        }
      : undefined,
    setupTime: figure('setup_time') ?? 0,
    spell: figure('spell', 'above'),
    breakTime: figure('break_time') ?? 0,
    day: figure('day_time', 'above'),
    copies: figure('copies') ?? 1,
  }
}
