import { lazy, Suspense } from 'react';
import { Link, Redirect, Route, Switch } from 'wouter';
import { httpServer } from '../server/httpServer.ts';
import { useWords } from '../text/useWords.ts';
import { FaultBoundary } from './FaultBoundary.tsx';
import { JobPage } from './JobPage.tsx';

const CataloguePage = lazy(() => import('../catalogue/CataloguePage.tsx'));
const JobsPage = lazy(async () => ({ default: (await import('./JobsPage.tsx')).JobsPage }));
const KeptPage = lazy(() => import('../kept/KeptPage.tsx'));

/** The page: the list of jobs, one job, the catalogue, the kept patterns. */
export function App() {
  const w = useWords();
  return (
    <FaultBoundary>
      <Switch>
        <Route path="/">
          <Suspense fallback={<p className="page-note">{w.app.loading}</p>}>
            <JobsPage server={httpServer} />
          </Suspense>
        </Route>
        <Route path="/jobs">
          <Redirect to="/" replace />
        </Route>
        <Route path="/catalogue">
          <Suspense fallback={<p className="page-note">{w.app.loading}</p>}>
            <CataloguePage server={httpServer} />
          </Suspense>
        </Route>
        <Route path="/patterns">
          <Suspense fallback={<p className="page-note">{w.app.loading}</p>}>
            <KeptPage server={httpServer} />
          </Suspense>
        </Route>
        <Route path="/jobs/:job/:stage?/:opening?">
          {(params) => <Opened id={(params as { readonly job: string }).job} />}
        </Route>
        <Route>
          <main className="page-note">
            <h1>{w.app.notFound}</h1>
            <Link href="/">{w.app.toJobs}</Link>
          </main>
        </Route>
      </Switch>
    </FaultBoundary>
  );
}

const Opened = ({ id }: { readonly id: string }) => <JobPage key={id} id={id} server={httpServer} />;
