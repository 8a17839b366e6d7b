package withers.ingest.change;

import withers.fact.Slot;
import withers.fact.Subject;
import withers.fact.WithdrawalReason;
import withers.id.RecordKey;

/** What has to be written to the log. Days are export dates, as days of the epoch. */
interface Announcements {

  /** Everything that the row at hand says, at the day of its export. */
  void state(RecordKey key);

  /** Everything that the log holds of this version of the record, said again of this day. */
  void restate(RecordKey key, Version version, int day);

  void withdraw(RecordKey key, Subject subject, Slot slot, WithdrawalReason reason, int day);

  void noLongerListed(RecordKey key, Subject subject, int day);
}
