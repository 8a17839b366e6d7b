package withers.run;

import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.history.History;
import withers.history.Statement;
import withers.log.ImportMarker;
import withers.packed.Packer;
import withers.packed.Packing;
import withers.packed.Unpacker;

/** What is in effect about a chip that is judged later, its events as the log holds them. */
final class HistoryPacking implements Packing<History> {

  @Override
  public void pack(History value, Packer out) {
    out.chip(value.chip());
    out.optional(value.turned(), out::common);
    out.flag(value.lasting());
    List<ChipEvent> events = value.statements().stream().map(Statement::event).toList();
    out.bytes(Streams.CHIPS.codec().encode(events));
    out.each(value.statements(), statement -> pack(statement, out));
  }

  private static void pack(Statement statement, Packer out) {
    out.chip(statement.chip());
    out.common(statement.marker());
    out.common(statement.firstStated());
    out.flag(statement.listed());
  }

  @Override
  public History unpack(Unpacker in) {
    ChipNumber chip = in.chip();
    Optional<LocalDate> turned = in.optional(() -> in.common(LocalDate.class));
    boolean lasting = in.flag();
    Queue<ChipEvent> events = new ArrayDeque<>();
    Streams.CHIPS.codec().decode(in.bytes(), events::add);
    return new History(chip, in.each(() -> statement(in, events.remove())), turned, lasting);
  }

  private static Statement statement(Unpacker in, ChipEvent event) {
    return new Statement(
        in.chip(), event, in.common(ImportMarker.class), in.common(LocalDate.class), in.flag());
  }
}
