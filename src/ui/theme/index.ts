import './tokens.css'
import './contrast.css'
import './base.css'
