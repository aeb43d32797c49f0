/** Safety and care, said beside the results that touch them. */
export const HOT_LAMPS = 'Hot lamps burn hands, cloth and paper: let them cool, and keep them clear of the original.'
export const MAINS_LOAD =
  'Count everything else on the circuit too; local codes and a licensed electrician decide what it may carry.'
export const FLASH_CAPACITORS =
  'A flash unit’s capacitors hold a dangerous charge even unplugged: never open one, and leave repair to licensed service.'
export const OVERHEAD_CAMERA =
  'A camera above an original is tethered by a second, independent line, and the column is weighted before it is mounted.'
export const LIGHT_SENSITIVE =
  'Light does lasting harm: keep lamps off between frames, and ask the keeper of the original before any session.'
export const RAW_OR_LINEAR = 'Readings must be linear in light: from a meter, or from pixels before any tone curve.'
export const HEATED_ORIGINAL =
  'Heat dries, warps and fades, and film can buckle or burn: a computed rise is no permission. Try it on a dummy with a thermometer, and ask the keeper of the original first.'
