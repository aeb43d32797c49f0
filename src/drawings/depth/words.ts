/** The texts in and below a plot of blur against aperture. */
export const DEPTH_WORDS = {
  // Omissions.
  depth: 'The depth required',
  magnification: 'The magnification',
  pixel: 'The pixel pitch',
  blur: 'The blur allowed',
  aperture: 'The aperture set',
  pupilRatio: 'The pupil ratio',
  wavelength: 'The wavelength',
  widest: 'The widest aperture',
  smallest: 'The smallest aperture',
  needsMagnification: 'the magnification is unknown.',
  needsDepth: 'The blur of defocus is not drawn: the depth required is unknown.',

  // Labels in the plot.
  blurAxis: (unit: string) => `Blur at the sensor, ${unit}`,
  apertureAxis: 'Aperture, f/',
  depthHead: (depth: string, ratio: string) => `Depth ${depth} at ${ratio}`,
  ratioHead: (ratio: string) => `At ${ratio}`,
  setHead: (aperture: string, blur: string) => `Set to ${aperture}: ${blur} together`,
  bestHead: (aperture: string, blur: string) => `Best ${aperture}: ${blur} together`,
  together: 'together',
  diffraction: 'diffraction',
  defocus: 'defocus',
  pixelCurve: 'pixel',
  allowed: (blur: string) => `allowed ${blur}`,
  setTo: (aperture: string) => `set to ${aperture}`,
  best: (aperture: string) => `best ${aperture}`,
  bestWithMark: (aperture: string, mark: string) => `best ${aperture}, mark ${mark}`,

  // The description.
  introduction: (from: string, to: string, ratio: string) =>
    `Diameter of the blur at the sensor against the aperture, ${from} to ${to}, at ${ratio}; the parts are added as the root of the sum of their squares.`,
  depthRequired: (depth: string) =>
    `The depth required is ${depth}, focused at its middle; defocus is the blur at both its ends, for a depth that is small compared with the distance.`,
  parts: (parts: string, together: string) => `${parts}, together ${together}`,
  part: (name: string, blur: string) => `${name} ${blur}`,
  atAperture: (aperture: string, parts: string) => `At the aperture set, ${aperture}: ${parts}.`,
  atBest: (aperture: string, parts: string) => `At the best aperture, ${aperture}: ${parts}.`,
  outsidePlot: (aperture: string) => `${aperture}, outside the plot`,
  nearestMark: (mark: string) => `The nearest mark is ${mark}.`,
  defocusAllowed: (blur: string) => `Defocus of ${blur} is allowed.`,
  defocusNeeds: (blur: string, aperture: string) => `Defocus of ${blur} is allowed; this needs ${aperture} or smaller.`,
  table: (unit: string) => ['Mark', `Defocus, ${unit}`, `Diffraction, ${unit}`, `Together, ${unit}`],
}
