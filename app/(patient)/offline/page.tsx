import { OfflineScreen } from './offline-screen';

export default function OfflinePage() {
  return <OfflineScreen />;
}
