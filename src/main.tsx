import { render } from 'preact';
import { App, type Services } from './app.tsx';
import { openRecords } from './records/records.ts';
import { watchRoute } from './screens/route.ts';
import { converse } from './session/conversation.ts';
import { runJob } from './session/job-session.ts';

const place = document.getElementById('app');
if (!place) throw new Error('The page has no place for the app.');

const services: Services = {
  records: await openRecords(),
  async converse({ log, from }) {
    const session = runJob(log, from);
    if (from) await session.voidLockout('void.restarted');
    return converse(session);
  },
};
render(<App services={services} route={watchRoute()} />, place);
