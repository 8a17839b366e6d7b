package withers.ingest.lookup;

import java.util.Optional;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.LookUpAnswer;
import withers.fact.Subject;
import withers.id.RecordKey;
import withers.log.LogSnapshot;
import withers.log.Partitions;
import withers.organisation.NameSpelling;
import withers.source.OwnSources;

/**
 * What the log knew of a number before a look-up of it was recorded.
 *
 * @param isSpokenOf whether any record but a look-up speaks of it
 * @param last what the registry was recorded to have answered on that day, by the last such record
 */
public record KnownBefore(boolean isSpokenOf, Optional<Fact.LookedUp> last) {

  static KnownBefore read(LogSnapshot log, LookUp lookUp) {
    Reading reading = new Reading(lookUp);
    int partition = Partitions.of(lookUp.chip(), Streams.CHIPS.partitions());
    log.<ChipEvent>replay(Streams.CHIPS, partition, (event, marker) -> reading.take(event));
    return new KnownBefore(reading.isSpokenOf, reading.last);
  }

  /** Whether the look-up would say nothing new. */
  public boolean says(LookUp lookUp) {
    return last.equals(Optional.of(lookUp.fact()));
  }

  /** The answer that a look-up with another one puts right. */
  public Optional<LookUpAnswer> corrected(LookUp lookUp) {
    return last.map(Fact.LookedUp::answer).filter(answer -> answer != lookUp.answer());
  }

  private static final class Reading {
    private final LookUp lookUp;
    private final Subject subject;
    private boolean isSpokenOf;
    private Optional<RecordKey> lastKey = Optional.empty();
    private Optional<Fact.LookedUp> last = Optional.empty();

    Reading(LookUp lookUp) {
      this.lookUp = lookUp;
      this.subject = new Subject.Chip(lookUp.chip());
    }

    void take(ChipEvent event) {
      if (!event.subject().equals(subject)) {
        return;
      }
      if (!event.origin().source().equals(OwnSources.LOOK_UPS)) {
        isSpokenOf = true;
      } else if (event.fact() instanceof Fact.LookedUp asked && isOfTheSame(event, asked)) {
        take(event.origin().key(), asked);
      }
    }

    private boolean isOfTheSame(ChipEvent event, Fact.LookedUp asked) {
      return event.day().equals(lookUp.day())
          && NameSpelling.key(asked.registry()).equals(NameSpelling.key(lookUp.registry()));
    }

    private void take(RecordKey key, Fact.LookedUp asked) {
      if (lastKey.isEmpty() || lastKey.get().compareTo(key) < 0) {
        lastKey = Optional.of(key);
        last = Optional.of(asked);
      }
    }
  }
}
