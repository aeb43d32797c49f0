import '../page.css'
import '../common/colour-scheme.ts'
import './evenfield-app.ts'
import { keepForOffline } from './update.ts'

// After what is on the screen: all of the site is fetched once.
addEventListener('load', () => void keepForOffline())
