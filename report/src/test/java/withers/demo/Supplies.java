package withers.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What the supplier sold: cartons of 20,000 numbers to each purchaser, of each usual stock. */
final class Supplies {

  private static final int CARTON = 20_000;
  private static final LocalDate FIRST_DELIVERY = LocalDate.of(2020, 10, 1);
  private static final Map<Integer, String> PURCHASERS =
      new TreeMap<>(
          Map.of(
              10, "Vendlemouth Vets",
              11, "Pellerwick Harbour Clinic",
              12, "Corvelsea Animal Clinic",
              13, "Nethersay Island Clinic",
              31, "Garrowness Shelter",
              32, "Hathersand Animal Shelter",
              33, "Ulverscar Cat Shelter",
              41, "Tollbarrow Farm Kennels",
              42, "Corvelsea Pet Shop"));

  private Supplies() {}

  static Ledger ledger(long seed, int animals) {
    Ledger ledger = new Ledger();
    int supplied = Math.min(animals, Chips.WITH_PURCHASER);
    PURCHASERS.forEach(
        (digits, name) -> {
          for (String registries : List.of(Chips.COAST, Chips.NORTHERN, Chips.EITHER)) {
            for (int first = 0; first < supplied; first += CARTON) {
              deliver(
                  ledger,
                  Dice.of(seed, registries + digits, first),
                  registries,
                  digits,
                  first,
                  name);
            }
          }
        });
    return ledger;
  }

  private static void deliver(
      Ledger ledger, Dice dice, String registries, int digits, int first, String purchaser) {
    LocalDate delivered = dice.after(FIRST_DELIVERY, 0, 80);
    ledger
        .entry(Source.SKARNHOLME_SUPPLY, "B" + registries + digits + "-" + first / CARTON)
        .on(delivered)
        .put(Field.FIRST, Chips.number(registries, digits, first))
        .put(Field.LAST, Chips.number(registries, digits, first + CARTON - 1))
        .put(Field.DAY, delivered)
        .put(Field.PURCHASER, purchaser)
        .put(Field.PREPAID, registries.equals(Chips.NORTHERN) ? "yes" : "no")
        .saved();
  }
}
