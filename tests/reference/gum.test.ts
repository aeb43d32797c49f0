import { describe, expect, test } from 'vitest'
import { LIBRARY } from '../../src/functions/index.ts'
import { type Cell, FORMAT, type TableCell, type Worksheet } from '../../src/worksheet/index.ts'
import { FullSheet } from '../../src/worksheet/renaming/full-sheet.ts'
import { simulate } from '../../src/worksheet/simulation/simulate.ts'
import { given, result } from '../worksheet/make.ts'

/*
 * The worked examples of JCGM 100:2008 (GUM), annex H, as worksheets. Readings and printed results as quoted in the
 * examples of an open library of a national metrology institute; H.1's input uncertainties from memory.
 */

const sheetOf = (cells: readonly Cell[]): FullSheet => {
  const worksheet: Worksheet = { format: FORMAT, version: 2, title: 'An example of the GUM', cells: [...cells] }
  return new FullSheet(worksheet, LIBRARY)
}
const figureOf = (sheet: FullSheet, id: string): number => {
  const outcome = sheet.outcome(id)
  if (outcome.state !== 'value')
    return expect.unreachable(`${id}: ${outcome.state === 'error' ? outcome.diagnostics[0]?.message : outcome.state}`)
  return outcome.value as number
}

describe('H.1, end-gauge calibration', () => {
  const MODEL = result(
    'length',
    'standard + difference - standard * (expansion_difference * off + expansion * apart)',
    {
      unit: 'mm',
    },
  )
  /** Each quantity with its standard uncertainty as its limit. */
  const STANDARD: readonly Cell[] = [
    given('standard', '50.000623 mm ± 25 nm', { unit: 'mm' }),
    given('difference', '215 nm ± 9.7 nm', { unit: 'nm' }),
    given('expansion', '11.5e-6 ± 1.2e-6', { unit: '1/K' }),
    given('off', '-0.1 ± 0.41', { unit: 'K' }),
    given('expansion_difference', '0 ± 0.58e-6', { unit: '1/K' }),
    given('apart', '0 ± 0.029', { unit: 'K' }),
    MODEL,
  ]
  /** Each with the distribution the example states; of the temperature’s two parts the cyclic one by its standard uncertainty. */
  const DISTRIBUTED: readonly Cell[] = [
    given('standard', '50.000623 mm ± 75 nm', { unit: 'mm', distribution: 'normal', coverage: '3' }),
    given('difference', '215 nm ± 9.7 nm', { unit: 'nm', distribution: 'normal', coverage: '1' }),
    given('expansion', '11.5e-6 ± 2e-6', { unit: '1/K' }),
    given('mean_off', '-0.1 ± 0.2', { unit: 'K', distribution: 'normal', coverage: '1' }),
    given('cyclic', '0 ± 0.35', { unit: 'K', distribution: 'normal', coverage: '1' }),
    result('off', 'mean_off + cyclic', { unit: 'K' }),
    given('expansion_difference', '0 ± 1e-6', { unit: '1/K' }),
    given('apart', '0 ± 0.05', { unit: 'K' }),
    MODEL,
  ]

  test('the length is 50.000838 mm, its combined standard uncertainty 32 nm to first order', () => {
    const sheet = sheetOf(STANDARD)
    expect(figureOf(sheet, 'length') * 1e3).toBeCloseTo(50.000838, 6)
    const outcome = sheet.outcome('length')
    const likely = outcome.state === 'value' ? (outcome.limits?.likely ?? 0) : 0
    expect(Math.round(likely * 1e9)).toBe(32)
  })

  test('the sheet says that its limits are not linear, and a simulation gives 34 nm, as the terms of second order do', () => {
    const sheet = sheetOf(DISTRIBUTED)
    const outcome = sheet.outcome('length')
    expect(outcome.state === 'value' && outcome.limits?.nonlinear).toBe(true)
    const { sd, mean } =
      simulate(sheet.engine, { tries: 200_000, seed: 1 }).figures.get('length') ?? expect.unreachable()
    expect(Math.round(sd * 1e9)).toBe(34)
    expect(mean * 1e3).toBeCloseTo(50.000838, 6)
  })
})

describe('H.2, simultaneous resistance and reactance', () => {
  const READINGS: TableCell = {
    kind: 'table',
    id: 'sets',
    name: 'sets',
    columns: [
      { name: 'voltage', unit: 'V' },
      { name: 'current', unit: 'mA' },
      { name: 'phase', unit: 'rad' },
      { name: 'resistance', formula: 'voltage / current * cos(phase)' },
      { name: 'reactance', formula: 'voltage / current * sin(phase)' },
      { name: 'impedance', formula: 'voltage / current' },
      { name: 'with_current', formula: '(voltage - mean_voltage) * (current - mean_current)' },
      { name: 'with_phase', formula: '(voltage - mean_voltage) * (phase - mean_phase)' },
      { name: 'both', formula: '(current - mean_current) * (phase - mean_phase)' },
    ],
    rows: [
      ['5.007', '19.663', '1.0456'],
      ['4.994', '19.639', '1.0438'],
      ['5.005', '19.640', '1.0468'],
      ['4.990', '19.685', '1.0428'],
      ['4.999', '19.678', '1.0433'],
    ].map((row) => [...row, '', '', '', '', '', '']),
  }
  const LISTS = { voltage: [5.007, 4.994, 5.005, 4.99, 4.999], current: [19.663, 19.639, 19.64, 19.685, 19.678] }
  const listOf = (values: readonly number[], unit: string): string =>
    `{${values.map((value) => `${value} ${unit}`).join(', ')}}`
  const SHEET: readonly Cell[] = [
    result('voltages', listOf(LISTS.voltage, 'V')),
    result('currents', listOf(LISTS.current, 'mA')),
    result('phases', '{1.0456 rad, 1.0438 rad, 1.0468 rad, 1.0428 rad, 1.0433 rad}'),
    result('mean_voltage', 'mean(voltages)'),
    result('mean_current', 'mean(currents)'),
    result('mean_phase', 'mean(phases)'),
    result('u_voltage', 'standard_deviation_of_mean(voltages)'),
    result('u_current', 'standard_deviation_of_mean(currents)'),
    result('u_phase', 'standard_deviation_of_mean(phases)'),
    READINGS,
    result('r_voltage_current', 'sum(sets.with_current) / 20 / (u_voltage * u_current)'),
    result('r_voltage_phase', 'sum(sets.with_phase) / 20 / (u_voltage * u_phase)'),
    result('r_current_phase', 'sum(sets.both) / 20 / (u_current * u_phase)'),
    result('resistance', 'mean_voltage / mean_current * cos(mean_phase)'),
    result('reactance', 'mean_voltage / mean_current * sin(mean_phase)'),
    // Sensitivities of the resistance, and the law of propagation with the correlations (JCGM 100, equation 16).
    result('from_voltage', 'resistance / mean_voltage * u_voltage'),
    result('from_current', '-resistance / mean_current * u_current'),
    result('from_phase', '-reactance * u_phase / 1 rad'),
    result(
      'u_resistance',
      'sqrt(from_voltage^2 + from_current^2 + from_phase^2 + 2 * from_voltage * from_current * r_voltage_current' +
        ' + 2 * from_voltage * from_phase * r_voltage_phase + 2 * from_current * from_phase * r_current_phase)',
    ),
    result('each_resistance', 'standard_deviation_of_mean(sets.resistance)'),
    result('each_reactance', 'standard_deviation_of_mean(sets.reactance)'),
    result('each_impedance', 'standard_deviation_of_mean(sets.impedance)'),
  ]

  test.each([
    // Table H.2.
    ['mean_voltage', 4.999, 4],
    ['u_voltage', 0.0032, 4],
    ['u_phase', 0.00075, 5],
    // Table H.4: the five sets evaluated one by one, which takes the correlation in by itself.
    ['resistance', 127.732, 3],
    ['each_resistance', 0.071, 3],
    ['reactance', 219.847, 3],
    ['each_reactance', 0.295, 3],
    ['each_impedance', 0.236, 3],
    // Table H.2, and H.3 with the correlations in the law of propagation.
    ['r_voltage_current', -0.36, 2],
    ['r_voltage_phase', 0.86, 2],
    ['r_current_phase', -0.65, 2],
    ['u_resistance', 0.071, 3],
  ])('%s is %d', (name, printed, digits) => {
    expect(figureOf(sheetOf(SHEET), name)).toBeCloseTo(printed, digits)
  })
})

describe('H.3, calibration of a thermometer', () => {
  const READ = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511]
  const OFF = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16]
  const SHEET: readonly Cell[] = [
    result('apart', `{${READ.map((value) => `${(value - 20).toFixed(3)} K`).join(', ')}}`),
    result('corrections', `{${OFF.map((value) => `${value} K`).join(', ')}}`),
    result('fit', 'line_fit(apart, corrections)'),
    result('intercept', 'fit.intercept'),
    result('slope', 'fit.slope'),
    result('u_intercept', 'fit.intercept_deviation'),
    result('u_slope', 'fit.slope_deviation'),
    result('scatter', 'fit.residual_deviation'),
    result('at_30', 'intercept + slope * 10 K'),
    // r = −Σθ/√(n Σθ²), by the sums that the deviations hold: u(intercept)² = s² Σθ²/D, u(slope)² = n s²/D.
    result('r', '-mean(apart) * u_slope / u_intercept'),
    result('u_at_30', 'sqrt(u_intercept^2 + (10 K * u_slope)^2 + 2 * 10 K * u_intercept * u_slope * r)'),
  ]

  test.each([
    ['intercept', -0.1712, 4],
    ['u_intercept', 0.0029, 4],
    ['slope', 0.00218, 5],
    ['u_slope', 0.00067, 5],
    ['r', -0.93, 2],
    ['scatter', 0.0035, 4],
    ['at_30', -0.1494, 4],
    ['u_at_30', 0.0041, 4],
  ])('%s is %d', (name, printed, digits) => {
    expect(figureOf(sheetOf(SHEET), name)).toBeCloseTo(printed, digits)
  })
})
