import './tokens.css'
import './base.css'
