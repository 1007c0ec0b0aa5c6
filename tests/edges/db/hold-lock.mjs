/** Another program that holds the write lock: `node hold-lock.mjs FILE MILLISECONDS`. Says "held" once it has it. */
import Sqlite from 'better-sqlite3';

const [file, milliseconds] = process.argv.slice(2);
const sqlite = new Sqlite(file, { timeout: 10_000 });
sqlite.exec('BEGIN IMMEDIATE');
console.log('held');
setTimeout(() => {
  sqlite.exec('COMMIT');
  sqlite.close();
}, Number(milliseconds));
