import type { Lamp, SetUp } from '../canvas/drawing-unit.ts'
import { aimOf, beamOf, capital, elevationOf, inWords, isPair, series } from './set-up-words.ts'
import { frontOf, sideways } from './side-view.ts'
import type { UprightPlacement } from './upright-inputs.ts'

type Show = (metres: number) => string

/** An upright set-up in sentences, with every figure it shows. */
export function describeUpright(setUp: SetUp, standing: UprightPlacement, show: Show, scale: string): string {
  const { originalWidth, originalHeight, fieldWidth, fieldHeight, sensor, lens, clear, mirror, lamps } = setUp
  const { lean, centre } = standing
  const size = (width: number, height: number | undefined): string =>
    height === undefined ? `${show(width)} wide` : `${show(width).replace(/ \D+$/, '')} × ${show(height)}`
  const degrees = Number(((Math.abs(lean) * 180) / Math.PI).toFixed(1))
  const leans = Math.abs(lean) < 1e-3 ? 'stands upright' : `leans ${degrees}° ${lean > 0 ? 'back' : 'forward'}`
  const front = frontOf(setUp)
  const place = front === undefined ? undefined : sideways(0, front, lean)
  const out = [
    ...(sensor === undefined ? [] : [`the sensor ${show(sensor)}`]),
    ...(lens === undefined ? [] : [`the lens (its front principal plane) ${show(lens)}`]),
    ...(clear === undefined ? [] : [`the lens’s front rim ${show(clear)}`]),
  ]
  return [
    `Elevation from the side and plan of an upright set-up at ${scale}.`,
    `The original ${originalWidth === undefined ? '' : `is ${size(originalWidth, originalHeight)} and `}${leans}${centre === undefined ? '' : `, its centre ${show(centre)} above the floor`}.`,
    ...(fieldWidth === undefined ? [] : [`The camera sees a field of ${size(fieldWidth, fieldHeight)}.`]),
    ...(place === undefined
      ? []
      : [
          `The lens stands ${centre === undefined ? '' : `${show(centre + place.up)} above the floor, `}${show(place.out)} level from the original’s centre, ${Math.abs(lean) < 1e-3 ? 'its axis level' : `its axis tilted ${degrees}° ${lean > 0 ? 'down' : 'up'}`}.`,
        ]),
    ...(out.length === 0
      ? []
      : [`${capital(series(out))} ${out.length === 1 ? 'stands' : 'stand'} out from the original.`]),
    ...describeLamps(lamps, standing, show),
    ...(mirror
      ? [
          `${show(mirror.height)} out, the mirror zone reaches ${show(mirror.atHeight)} to either side of the centre line.`,
        ]
      : []),
    ...(out.length > 0 || lamps.length > 0
      ? ['Camera, easel and lamps are placed to scale; their own sizes are only for orientation.']
      : []),
  ].join(' ')
}

function describeLamps(lamps: readonly Lamp[], { lean, centre }: UprightPlacement, show: Show): readonly string[] {
  const height = ({ y, z }: Lamp): string =>
    centre === undefined ? '' : `, ${show(centre + sideways(y, z, lean).up)} above the floor`
  const [first, second] = lamps
  if (!first) return []
  if (isPair(lamps) && second) {
    const right = first.x > 0 ? first : second
    const past = right.aim_x < 0 ? 'past' : 'short of'
    const aim =
      Math.abs(right.aim_x) < 5e-4 ? aimOf(right, show) : `each aimed ${show(Math.abs(right.aim_x))} ${past} the centre`
    return [
      `Two lamps stand ${show(right.x)} to either side of the centre line, ${show(right.z)} out from the original${height(right)}, at ${elevationOf(right)} to its plane, ${aim}${beamOf(right)}.`,
    ]
  }
  const each = lamps.map((lamp) => {
    const aside =
      Math.abs(lamp.x) < 5e-4
        ? 'on the centre line'
        : `${show(Math.abs(lamp.x))} ${lamp.x < 0 ? 'left' : 'right'} of the centre line`
    return `${lamps.length === 1 ? 'The lamp' : `Lamp ${lamp.number}`} stands ${aside}, ${show(lamp.z)} out from the original${height(lamp)}, at ${elevationOf(lamp)} to its plane, ${aimOf(lamp, show)}${beamOf(lamp)}.`
  })
  return lamps.length === 1 ? each : [`${capital(inWords(lamps.length))} lamps.`, ...each]
}
