package withers.log.sqlite;

/** What tells a chunk from any other of its import and partition, and how many events it holds. */
record ChunkHead(long sequence, long piece, int events, long checksum) {}
