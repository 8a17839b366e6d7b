package withers.ingest.translate;

import java.util.Optional;
import withers.fact.Basis;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.ingest.profile.ColumnName;
import withers.ingest.profile.PartyName;

/** A seller's animal: sold, and perhaps brought back. */
final class SellerSales {

  private SellerSales() {}

  static void translate(RowInHand row, Subject animal) {
    row.day(ColumnName.SOLD)
        .ifPresent(
            day ->
                row.state(
                    animal,
                    Slot.SALE,
                    Optional.of(day),
                    new Fact.HandedOver(new Party.Own(), row.party(PartyName.BUYER), Basis.SALE)));
    row.day(ColumnName.RETURNED)
        .ifPresent(
            day ->
                row.state(
                    animal,
                    Slot.SALE_RETURN,
                    Optional.of(day),
                    new Fact.HandedOver(
                        row.party(PartyName.BUYER), new Party.Own(), Basis.SALE_RETURNED)));
  }
}
