/** The view of an open sheet: filling it in, setting it at the stand, building it, or the guide to functions. */
export type Face = 'fill' | 'stand' | 'build' | 'functions'

/** The place in the app, given by the part of the address after `#`, which no server sees. */
export type Route =
  | { readonly at: 'shelf' }
  /** The studio's equipment. */
  | { readonly at: 'kit' }
  /** A sheet composed from answers. */
  | { readonly at: 'answers' }
  /** A job or an empty sheet that has not been saved yet; `own` without the job's example. */
  | { readonly at: 'new'; readonly template: string; readonly face: Face; readonly own?: true }
  | { readonly at: 'sheet'; readonly id: string; readonly face: Face }
  | { readonly at: 'link'; readonly fragment: string }
  /** A file on the app's own server. */
  | { readonly at: 'server'; readonly path: string }

/** The page that the part of an address behind `#` leads to; the shelf where it is none. */
export function readRoute(hash: string): Route {
  const fragment = hash.replace(/^#/, '')
  if (fragment.startsWith('s=')) return { at: 'link', fragment }
  if (fragment.startsWith('open=')) return { at: 'server', path: decoded(fragment.slice('open='.length)) }
  if (fragment === 'kit' || fragment === 'answers') return { at: fragment }
  const [place, name, last] = fragment.split('/')
  const face = last === 'stand' || last === 'build' || last === 'functions' ? last : 'fill'
  if (place === 'sheet' && name) return { at: 'sheet', id: decoded(name), face }
  if (place === 'new' && name) return { at: 'new', template: decoded(name), face }
  if (place === 'start' && name) return { at: 'new', template: decoded(name), face, own: true }
  return { at: 'shelf' }
}

const decoded = (text: string): string => {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}

/** The address of a saved sheet. */
export const toSheet = (id: string): string => `#sheet/${encodeURIComponent(id)}`

/** Begins the name of a template of the studio in an address. */
export const OWN_TEMPLATE = 'own-'

/** The address that opens a job or template as a new sheet. */
export const toNew = (template: string): string => `#new/${encodeURIComponent(template)}`

/** A job for the user's own figures, without its example. */
export const toStart = (template: string): string => `#start/${encodeURIComponent(template)}`

export const TO_ANSWERS = '#answers'

/** The address of this page with another fragment. */
export const addressOf = (fragment: string): string => `${location.href.replace(/#.*$/, '')}#${fragment}`

/** The address of the same sheet in another face. */
export const withFace = (hash: string, face: Face): string => {
  const here = hash.replace(/\/(stand|build|functions)$/, '')
  return face === 'fill' ? here : `${here}/${face}`
}
