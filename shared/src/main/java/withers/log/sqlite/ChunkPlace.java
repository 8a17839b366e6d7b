package withers.log.sqlite;

import withers.id.ImportId;

/** Where a chunk belongs: the piece of a batch. */
record ChunkPlace(String stream, int partition, ImportId importId, long sequence, long piece) {

  @Override
  public String toString() {
    return "Event log, stream %s, partition %d, import %s, batch %d, piece %d"
        .formatted(stream, partition, importId, sequence, piece);
  }
}
