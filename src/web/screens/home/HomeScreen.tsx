import { FirstScreen } from '../first/FirstScreen.tsx';
export const HomeScreen = () => <FirstScreen />;
