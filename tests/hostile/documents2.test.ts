import { documentSuite, RUNS } from './documents.suite.ts';

// Two parts, in two files so that both cores have one. PANEWRIGHT_RUNS=5000 tries 10,000 in all.
documentSuite(RUNS, 8);
