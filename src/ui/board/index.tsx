import './board.css'

export { BoardScreen } from './board-screen'
