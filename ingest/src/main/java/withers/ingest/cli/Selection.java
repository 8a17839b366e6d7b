package withers.ingest.cli;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import withers.ingest.ExportSet;
import withers.ingest.ExportSorter;
import withers.ingest.Incoming;
import withers.ingest.Ingested;
import withers.ingest.SortedExports;
import withers.ingest.inbox.InboxFile;
import withers.ingest.receipt.Receipt;
import withers.ingest.receipt.ReceiptBook;

/**
 * Chooses what is read: new files, and with them known ones that belong to the same export, since
 * only all of its files together are the export.
 */
final class Selection {

  private final Function<InboxFile, Optional<Receipt>> known;
  private final Supplier<ExportSorter> sorters;
  private final Map<InboxFile, Receipt> resting = new LinkedHashMap<>();
  private final List<InboxFile> wanted = new ArrayList<>();
  private SortedExports sorted = new SortedExports(List.of(), List.of(), Map.of(), List.of());

  /**
   * @param known the receipt of a file that need not be read again
   * @param sorters gives a sorter for each attempt to sort
   */
  Selection(Function<InboxFile, Optional<Receipt>> known, Supplier<ExportSorter> sorters) {
    this.known = known;
    this.sorters = sorters;
  }

  void select(List<InboxFile> files) {
    for (InboxFile file : files) {
      known
          .apply(file)
          .ifPresentOrElse(receipt -> resting.put(file, receipt), () -> wanted.add(file));
    }
    sort();
    List<InboxFile> siblings = resting.keySet().stream().filter(this::belongsToOneSorted).toList();
    if (!siblings.isEmpty()) {
      siblings.forEach(resting::remove);
      wanted.addAll(siblings);
      sort();
    }
  }

  private void sort() {
    sorted =
        sorters
            .get()
            .sortAll(
                wanted.stream().map(file -> new Incoming(file.path(), file.source())).toList());
  }

  private boolean belongsToOneSorted(InboxFile file) {
    return Optional.ofNullable(resting.get(file)).stream()
        .flatMap(receipt -> receipt.readings().stream())
        .anyMatch(reading -> sorted.sets().stream().anyMatch(set -> isOf(set, reading)));
  }

  private static boolean isOf(ExportSet set, Receipt.Reading reading) {
    return !set.isCorrections()
        && set.profile().id().equals(reading.source())
        && set.exportDate().equals(reading.exportDate())
        && Receipt.extent(set.extent()).equals(reading.extent());
  }

  SortedExports sorted() {
    return sorted;
  }

  /** The files that were left alone, with the time when they were read. */
  List<Ingested.ReadBefore> readBefore() {
    return resting.values().stream()
        .map(
            receipt ->
                new Ingested.ReadBefore(
                    receipt.file(), receipt.readings().get(0).source(), receipt.ended()))
        .toList();
  }

  /** A book for the receipts of the files that are read. */
  ReceiptBook book(Instant begun) {
    ReceiptBook book =
        new ReceiptBook(
            wanted.stream()
                .map(file -> new ReceiptBook.Entry(file.path(), file.shown(), file.state()))
                .toList(),
            begun);
    sorted.sets().forEach(book::expect);
    sorted.refused().forEach(book::refuse);
    return book;
  }
}
