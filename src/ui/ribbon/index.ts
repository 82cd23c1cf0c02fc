import './ribbon.css'

export { GestureRibbon } from './gesture-ribbon'
export { RibbonView } from './ribbon-view'
