package withers.contact;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

/**
 * Seeded contacts, all invented: equal seeds give equal contacts. Telephone numbers are of the
 * 555-01xx range.
 */
public final class RandomContacts {

  private static final List<String> GIVEN =
      List.of("Ada", "Bo", "Zoë", "Zoe\u0308", "明", "Ọlá", "O'Dee", "");
  private static final List<String> FAMILY = List.of("Brandt", "de la Quay", "Þór", "海", "\"Q\"");
  private static final List<String> TOWNS = List.of("Port Öst", "Saltmere", "Cliff End", "");

  private final Random random;

  public RandomContacts(long seed) {
    this.random = new Random(seed);
  }

  public Contact contact() {
    int number = random.nextInt(1_000_000);
    return new Contact(
        random.nextInt(4) == 0 ? one(GIVEN) + " " + one(FAMILY) + " " + number : "",
        one(GIVEN),
        one(FAMILY),
        IntStream.range(0, random.nextInt(3)).mapToObj(i -> phone()).toList(),
        List.of("p" + number + "@example.org"),
        List.of(1 + random.nextInt(90) + " Quay Row", "Flat " + random.nextInt(9)),
        "AB" + random.nextInt(100),
        one(TOWNS),
        "Coast",
        random.nextBoolean() ? "XX" : "");
  }

  public List<Contact> contacts(int count) {
    return IntStream.range(0, count).mapToObj(i -> contact()).toList();
  }

  private String phone() {
    return "+1 212 555 01%02d".formatted(random.nextInt(100));
  }

  private String one(List<String> values) {
    return values.get(random.nextInt(values.size()));
  }
}
