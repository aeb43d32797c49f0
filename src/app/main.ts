import './page.css'
import './face.ts'
import './evenfield-app.ts'
