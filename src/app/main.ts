import './page.css'
import './face.ts'
import './evenfield-app.ts'
import { keepForOffline } from './newer.ts'

// After what is on the screen: all of the site is fetched once.
addEventListener('load', () => void keepForOffline())
