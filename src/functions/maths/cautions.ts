/** Safety and care, said beside the results that touch them. */
export const HOT_LAMPS = 'Hot lamps burn hands, cloth and paper: let them cool, and keep them clear of the original.'
export const FLASH_CAPACITORS =
  'A flash unit’s capacitors hold a dangerous charge even unplugged: never open one, and leave repair to licensed service.'
export const RAW_OR_LINEAR = 'Readings must be linear in light: from a meter, or from pixels before any tone curve.'
