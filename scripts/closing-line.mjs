// Prints the plain closing line from the JSON test report, and never a greener one than the exit status it is given.
import { existsSync, readFileSync } from 'node:fs';

const [reportFile, status] = process.argv.slice(2);
const report = existsSync(reportFile)
  ? JSON.parse(readFileSync(reportFile, 'utf8'))
  : { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] };
const unloadable = report.testResults.filter(
  (file) => file.status === 'failed' && file.assertionResults.every((a) => a.status !== 'failed'),
).length;
const counted = report.numFailedTests + unloadable;
const ok = status === '0' && counted === 0 && report.numPassedTests > 0;
const failed = ok ? 0 : Math.max(1, counted);
const skipped = report.numPendingTests + report.numTodoTests;
console.log(
  `${report.numPassedTests} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`,
);
process.exitCode = ok ? 0 : Number(status) || 1;
