package withers.answered;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import withers.cases.Answered;
import withers.codec.Streams;
import withers.id.ImportId;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.SampleMarkers;
import withers.source.OwnSources;

/** Brings answers to a log, as a sheet that came back does. */
public final class Answering {
  private Answering() {}

  /** One sheet, which is one import. */
  public static void sheet(List<Answered> answers, long number, EventLog log) {
    ImportId id = new ImportId(new UUID(3, number));
    log.append(new Batch<>(Streams.CASES, 0, id, 0, List.copyOf(answers)));
    LocalDate day = answers.get(0).day();
    log.commit(SampleMarkers.next(log, id, OwnSources.ANSWERS, day, answers.size()));
  }
}
