/** A word or phrase that the app no longer uses, and what it says now. */
export interface Banned {
  readonly pattern: RegExp
  readonly instead: string
  /** Only in the app's own sentences: a job may wait, look at a frame, or be valid for a time. */
  readonly appOnly?: true
}

/** Plain modern English, one word for one thing. */
const BANNED: readonly Banned[] = [
  { pattern: /\b(kept|keeping)\b/i, instead: 'saved, saving' },
  { pattern: /\b(does|do) not hold\b|^holds$|\bholds (when|for|as given)\b/i, instead: 'fails, passes' },
  { pattern: /\b(is|are) close\b|\bclose within\b/i, instead: 'marginal, warning margin' },
  { pattern: /\bwaits?\b/i, instead: 'needs', appOnly: true },
  { pattern: /\bmend(s|ed|ing)?\b/i, instead: 'fix, suggestion' },
  { pattern: /\bset(s|ting)? in a section\b|\bset it in\b/i, instead: 'add a section' },
  { pattern: /\bmore room\b/i, instead: 'increase margin' },
  { pattern: /^look at\b/i, instead: 'go to', appOnly: true },
  { pattern: /\bmore exact\b|\bseldom known\b/i, instead: 'fine adjustments' },
  { pattern: /\bword beside\b/i, instead: 'hint' },
  { pattern: /\bsays when\b/i, instead: 'message when', appOnly: true },
  { pattern: /\bit should be\b/i, instead: 'target value' },
  { pattern: /^feeds\b/i, instead: 'used by' },
  { pattern: /\bnever mind\b|^leave$/i, instead: 'cancel' },
  { pattern: /\btaken out\b|\btake out\b|\bput in below\b/i, instead: 'removed, added' },
  { pattern: /\bleaves off\b/i, instead: 'closes' },
  { pattern: /\bheld up by\b/i, instead: 'blocked by an error in' },
  { pattern: /\breckon(s|ed|ing)?\b|\bworked out\b|\bcomputed anew\b/i, instead: 'computed' },
  { pattern: /\bheed(s|ed)?\b|\bsought\b|\btold\b/i, instead: 'observed, searched, shown' },
  { pattern: /\bbears the name\b/i, instead: 'is named' },
  { pattern: /\bat hand\b|\bso many\b|\bwhoever\b|\bone[’']s own\b/i, instead: 'a plainer phrase' },
  { pattern: /\bbehind (the|its) field\b/i, instead: 'after the field' },
  { pattern: /\boutlay\b/i, instead: 'expenses' },
  { pattern: /\bevenest\b/i, instead: 'most even' },
  { pattern: /\bhand meter\b/i, instead: 'hand-held meter' },
  { pattern: /\buntouched\b/i, instead: 'without touching it' },
  { pattern: /\bsmall letters\b/i, instead: 'lower-case letters' },
  { pattern: /\bto and fro\b/i, instead: 'back and forth' },
  { pattern: /\bframes a page\b/i, instead: 'says how many frames a page needs' },
  { pattern: /\bkeepers?\b/i, instead: 'custodian' },
  { pattern: /\bdepth in focus\b/i, instead: 'depth of field' },
  { pattern: /\bin hand\b/i, instead: 'current' },
  { pattern: /\bless sampling\b/i, instead: 'a lower sampling' },
  { pattern: /\bthe dose\b/i, instead: 'the light received' },
  { pattern: /\bin its own (middle|picture)\b/i, instead: 'in the middle of the frame' },
  { pattern: /\baltogether\b|\bin all$/i, instead: 'total' },
  { pattern: /\bpieces? (as a|of each)\b|\bof a piece\b/i, instead: 'original' },
  { pattern: /\bonce it is different\b|\bfor good\b/i, instead: 'a plainer phrase' },
  { pattern: /\bplease\b|\bforgot\b|\b(in)?valid\b/i, instead: 'what is wrong, where, and what to do', appOnly: true },
]

export const bannedIn = (text: string): readonly Banned[] => BANNED.filter(({ pattern }) => pattern.test(text))

/** The retired words in a text of a template. */
export const bannedInTemplate = (text: string): readonly Banned[] => bannedIn(text).filter(({ appOnly }) => !appOnly)
