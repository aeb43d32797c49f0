import { type FunctionRecord, number, record } from '../../language/index.ts'
import {
  AREA,
  ENERGY,
  HEAT_TRANSFER,
  ILLUMINANCE,
  IRRADIANCE,
  LUMINOUS_FLUX,
  MASS,
  POWER,
  TEMPERATURE,
  TIME,
} from '../../units/index.ts'
import { NOT_NEGATIVE, PLAIN, POSITIVE, parameter, SHARE } from '../maths/parameters.ts'

const HEATED_ORIGINAL =
  'Heat dries, warps and fades, and film can buckle or burn: a small computed rise does not make it safe. Try it on a dummy with a thermometer, and ask the custodian first.'

/** Of the 2018 CODATA: exact in the revised SI, cut to its first ten digits. */
const STEFAN_BOLTZMANN = 5.670374419e-8

const WARMING = record('warming of a sheet', {
  rise: number(TEMPERATURE),
  settled: number(TEMPERATURE),
  time_constant: number(TIME),
})

const irradianceParameter = parameter('irradiance', number(IRRADIANCE), 'at the original', { range: NOT_NEGATIVE })
const absorptance = parameter(
  'absorptance',
  PLAIN,
  'share of it that stays in the original: about 0.2 where it is white, 0.9 where it is black',
  { range: SHARE },
)

/** What the light turns into in an original. */
export const HEAT: readonly FunctionRecord[] = [
  {
    name: 'irradiance_from_lux',
    subject: 'care',
    about: 'The radiant power that reaches an original with its light.',
    also: ['heat', 'radiation', 'watts per square metre', 'luminous efficacy'],
    parameters: [
      parameter('E', number(ILLUMINANCE), 'illuminance at the original', { range: NOT_NEGATIVE }),
      parameter(
        'efficacy',
        number(LUMINOUS_FLUX.over(POWER)),
        'of the lamp’s radiation: about 300 lm/W for white LEDs, 20 lm/W for filament lamps with their infrared',
        { range: { above: 0, most: 683.002 } },
      ),
    ],
    result: number(IRRADIANCE),
    formula: 'E/K',
    source:
      'definition of luminous efficacy of radiation (IEC 60050-845); 683.002 lm/W is the greatest possible, at 555 nm',
    validity:
      'Efficacy of the radiation that reaches the original, not of the electric power; a heat filter raises it: see its data sheet.',
    safety: [HEATED_ORIGINAL],
    examples: [
      { formula: 'irradiance_from_lux(2000 lx, 20 [lm/W])', gives: '100 [W/m^2]' },
      { formula: 'irradiance_from_lux(2000 lx, 700 [lm/W])', refuses: 'efficacy' },
    ],
    compute: (E: number, efficacy: number) => E / efficacy,
  },
  {
    name: 'absorbed_energy',
    subject: 'care',
    about: 'The energy that an original takes up while it is lit.',
    also: ['heat', 'radiant exposure'],
    parameters: [
      irradianceParameter,
      absorptance,
      parameter('time', number(TIME), 'how long it is lit', { range: NOT_NEGATIVE }),
    ],
    result: number(ENERGY.over(AREA)),
    formula: 'H = α E t',
    // Reflectances of white and black, 0.8 and 0.1: a lamp maker’s encyclopedia of light, “Reflection”, table of colours.
    source: 'definition of absorptance; a white face reflects about 0.8, a black one 0.1 (lighting tables)',
    safety: [HEATED_ORIGINAL],
    examples: [
      { formula: 'absorbed_energy(100 [W/m^2], 50 %, 1 min)', gives: '3000 [J/m^2]' },
      { formula: 'absorbed_energy(100 [W/m^2], 150 %, 1 min)', refuses: 'absorptance' },
    ],
    compute: (irradiance: number, share: number, time: number) => irradiance * share * time,
  },
  {
    name: 'surface_conductance',
    subject: 'care',
    about: 'The heat that a warm face gives off to a still room, for each kelvin it is warmer.',
    also: ['heat transfer coefficient', 'surface resistance', 'convection'],
    parameters: [
      parameter('convection', number(HEAT_TRANSFER), 'to still air: 5 facing up, 2.5 upright, 0.7 facing down', {
        default: '5 [W/(m^2 K)]',
        range: NOT_NEGATIVE,
      }),
      parameter('temperature', number(TEMPERATURE), 'of the room', { default: '293.15 K', range: POSITIVE }),
      parameter('emissivity', PLAIN, 'of the face, for heat; paper, film and glass about 0.9', {
        default: '0.9',
        range: SHARE,
      }),
    ],
    result: number(HEAT_TRANSFER),
    formula: 'h = h_c + 4 ε σ T³',
    source: 'ISO 6946, surface resistance; coefficients of convection as in ISO 13789, table 8',
    validity: 'Within some ten kelvins of the room, whose walls are as warm as its air; no draught.',
    examples: [
      // 4 · 0.9 · 5.670374e-8 · 293.15³ = 5.1427.
      { formula: 'surface_conductance()', gives: '10.1427 [W/(m^2 K)]', within: '0.0001 [W/(m^2 K)]' },
      { formula: 'surface_conductance(emissivity: 2)', refuses: 'emissivity' },
    ],
    compute: (convection: number, temperature: number, emissivity: number) =>
      convection + 4 * emissivity * STEFAN_BOLTZMANN * temperature ** 3,
  },
  {
    name: 'sheet_warming',
    subject: 'care',
    about: 'How much warmer a lit sheet becomes than the room.',
    also: ['heat', 'temperature rise', 'slide', 'paper', 'hot lamp'],
    parameters: [
      irradianceParameter,
      absorptance,
      parameter('time', number(TIME), 'how long it is lit', { range: NOT_NEGATIVE }),
      parameter('mass', number(MASS.over(AREA)), 'of the sheet, for its area: 0.08 kg/m² is copier paper', {
        range: POSITIVE,
      }),
      parameter(
        'heat_capacity',
        number(ENERGY.over(MASS).over(TEMPERATURE)),
        'of its material; paper about 1.4 kJ/(kg K)',
        {
          default: '1400 [J/(kg K)]',
          range: POSITIVE,
        },
      ),
      parameter('conductance', number(HEAT_TRANSFER), 'of all its free faces together, as surface_conductance gives', {
        default: '10 [W/(m^2 K)]',
        range: POSITIVE,
      }),
    ],
    result: WARMING,
    formula: 'ΔT = (α E/h) (1 − e^(−t/τ)), τ = m c/h',
    source:
      'derived: a thin sheet warms evenly and loses heat in proportion to how warm it is; heat capacity of paper: ForestBioFacts, Paper Physics, thermal properties (1.4 kJ/(kg K) of the furnish, 1.45 of the fibre wall)',
    validity:
      'A thin sheet in still air, one face free, on a board that takes no heat: the warmest case. A thick or wet original, or one behind glass, warms differently: measure it on a dummy.',
    safety: [HEATED_ORIGINAL],
    examples: [
      { formula: 'sheet_warming(100 [W/m^2], 50 %, 1 h, 0.08 [kg/m^2]).settled', gives: '5 K' },
      { formula: 'sheet_warming(100 [W/m^2], 50 %, 1 h, 0.08 [kg/m^2]).time_constant', gives: '11.2 s' },
      // 5 K (1 − 1/e) after one time constant.
      {
        formula: 'sheet_warming(100 [W/m^2], 50 %, 11.2 s, 0.08 [kg/m^2]).rise',
        gives: '3.1606 K',
        within: '0.0001 K',
      },
      { formula: 'sheet_warming(100 [W/m^2], 50 %, 1 h, 0 [kg/m^2])', refuses: 'mass' },
    ],
    compute: (
      irradiance: number,
      share: number,
      time: number,
      mass: number,
      heatCapacity: number,
      conductance: number,
    ) => {
      const settled = (share * irradiance) / conductance
      const timeConstant = (mass * heatCapacity) / conductance
      return { rise: settled * -Math.expm1(-time / timeConstant), settled, time_constant: timeConstant }
    },
  },
]
