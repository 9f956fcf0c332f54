import { spawn } from 'node:child_process';

/** Runs a program to its end; gives its exit code, null when it could not be started or was ended by a signal. */
export function runProgram(program, args, options) {
  return new Promise((done) => {
    const child = spawn(program, args, options);
    child.once('error', () => done(null));
    child.once('exit', done);
  });
}
