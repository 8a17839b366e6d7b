package withers.log.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.log.LogDamagedException;

/** Makes filters of what is on the log: an older program wrote it, or they were deleted. */
record MissingFilters(Connection connection, ChipFilters filters) {

  /** Makes those of every import that needs some. */
  void make(List<Committed> imports) throws SQLException {
    for (Committed one : filters.missing(imports)) {
      make(one);
    }
  }

  private void make(Committed one) throws SQLException {
    for (int i = 0; i < Streams.CHIPS.partitions(); i++) {
      if (one.contents().at(Streams.CHIPS.name(), i).chunks() > 0) {
        try (ChunkReader chunks = new ChunkReader(connection, Streams.CHIPS.name(), i)) {
          chunks.read(one.marker().id(), this::make);
        }
      }
    }
    filters.commit(one.marker().id());
  }

  private void make(Chunk chunk) {
    filter(chunk).ifPresent(filter -> filters.add(chunk, filter));
  }

  /** None of a chunk that is damaged: who needs it reads it, and is told. */
  private Optional<ChipFilter> filter(Chunk chunk) {
    List<ChipEvent> events = new ArrayList<>();
    try {
      Streams.CHIPS.codec().decode(chunk.plain(), events::add);
    } catch (LogDamagedException e) {
      return Optional.empty();
    }
    return filters.of(Streams.CHIPS, events);
  }
}
