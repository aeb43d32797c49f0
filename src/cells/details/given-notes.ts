/** What stands below a field now and then, fetched with the first of them. */
import './outdated-note.ts'
import './size-offer.ts'
