package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import withers.delivery.Delivery;
import withers.delivery.Delivery.Step;
import withers.id.OrganisationId;

/** Deliveries are read as they were written. The approved forms are for good. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class DeliveryFormsTest {

  private static final Json<Delivery> JSON = new Json<>(WireTable.DELIVERIES);
  private static final Delivery PENDING =
      new Delivery(
          new OrganisationId("cliff"),
          "2024-03-01-0123456789ab",
          LocalDate.of(2024, 3, 1),
          LocalDate.of(2024, 3, 2),
          Step.PENDING,
          List.of("38WJ-K7YM", "SDAM-YRC7"),
          "");
  private static final Delivery ACCEPTED =
      PENDING.then(Step.ACCEPTED, LocalDate.of(2024, 3, 2), "250 2.0.0 queued");

  @Test
  void JSON_has_its_approved_form() {
    assertThat(JSON.write(PENDING)).isEqualTo(Approved.text("delivery/pending.json"));
    assertThat(JSON.write(ACCEPTED)).isEqualTo(Approved.text("delivery/accepted.json"));
    assertThat(JSON.read(Approved.text("delivery/pending.json"))).isEqualTo(PENDING);
    assertThat(JSON.read(Approved.text("delivery/accepted.json"))).isEqualTo(ACCEPTED);
  }

  @Test
  void a_chunk_has_its_approved_bytes() {
    List<Delivery> both = List.of(PENDING, ACCEPTED);
    assertThat(HexFormat.of().formatHex(Streams.DELIVERIES.codec().encode(both)))
        .isEqualTo(Approved.text("delivery/delivery.hex"));
    List<Delivery> read = new ArrayList<>();
    byte[] chunk = HexFormat.of().parseHex(Approved.text("delivery/delivery.hex"));
    Streams.DELIVERIES.codec().decode(chunk, read::add);
    assertThat(read).isEqualTo(both);
  }
}
