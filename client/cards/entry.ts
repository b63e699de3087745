// The screens of one's own cards, with their styles.
import '../tiles/tiles.css';
import '../ui/sheet.css';
import './own/my-cards.css';
import './editor/editor.css';

export { CardEditor } from './editor/card-editor.tsx';
export { CardFromLink } from './own/card-from-link.tsx';
export { MyCards } from './own/my-cards.tsx';
