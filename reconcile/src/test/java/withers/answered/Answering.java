package withers.answered;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import withers.cases.Answered;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.Tally;
import withers.source.Extent;
import withers.source.OwnSources;

/** Brings answers to a log, as a sheet that came back does. */
public final class Answering {
  private Answering() {}

  /** One sheet, which is one import. */
  public static void sheet(List<Answered> answers, long number, EventLog log) {
    ImportId id = new ImportId(new UUID(3, number));
    log.append(new Batch<>(Streams.CASES, 0, id, 0, List.copyOf(answers)));
    log.commit(
        new ImportMarker(
            id,
            log.snapshot().newest(OwnSources.ANSWERS).map(ImportMarker::id),
            OwnSources.ANSWERS,
            Optional.empty(),
            answers.get(0).day(),
            new Extent.Changes(),
            List.of(),
            new Tally(0, 0, 0, 0, 0, answers.size()),
            new TreeSet<>(),
            new TreeSet<>(),
            Instant.EPOCH));
  }
}
