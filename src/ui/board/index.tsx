import './board.css'

export { BoardPlace } from './place'
