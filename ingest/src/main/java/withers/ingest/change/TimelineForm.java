package withers.ingest.change;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import withers.chip.ChipNumber;
import withers.fact.Subject;

/** A timeline as bytes. The form lives no longer than a cache: it has no versions. */
final class TimelineForm {

  /** The kinds of subject, in the order of their numbers. */
  private enum Kind {
    CHIP,
    DAMAGED,
    ANIMAL,
    RANGE;

    static Kind of(Subject subject) {
      if (subject instanceof Subject.Chip) {
        return CHIP;
      }
      if (subject instanceof Subject.Damaged) {
        return DAMAGED;
      }
      return subject instanceof Subject.Animal ? ANIMAL : RANGE;
    }
  }

  private static final Kind[] KINDS = Kind.values();

  private TimelineForm() {}

  static byte[] write(Timeline timeline) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(64);
    try (DataOutputStream out = new DataOutputStream(bytes)) {
      out.writeInt(timeline.told().size());
      for (Told told : timeline.told()) {
        out.writeInt(told.day());
        version(told.version(), out);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private static void version(Version version, DataOutputStream out) throws IOException {
    out.writeLong(version.high());
    out.writeLong(version.low());
    out.writeInt(version.day());
    out.writeInt(version.places().size());
    for (Place place : version.places()) {
      out.writeInt(place.slots());
      subject(place.subject(), out);
    }
    out.writeInt(version.links().size());
    for (String link : version.links()) {
      out.writeUTF(link);
    }
  }

  private static void subject(Subject subject, DataOutputStream out) throws IOException {
    out.writeByte(Kind.of(subject).ordinal());
    if (subject instanceof Subject.Chip chip) {
      out.writeLong(chip.number().packed());
    } else if (subject instanceof Subject.Animal animal) {
      out.writeUTF(animal.animalId());
    } else if (subject instanceof Subject.Damaged damaged) {
      out.writeUTF(damaged.original());
      out.writeInt(damaged.candidates().size());
      for (ChipNumber candidate : damaged.candidates()) {
        out.writeLong(candidate.packed());
      }
    }
  }

  static Timeline read(byte[] bytes) {
    Timeline timeline = new Timeline();
    try (DataInputStream in = new DataInputStream(new ByteArrayInputStream(bytes))) {
      int points = in.readInt();
      for (int i = 0; i < points; i++) {
        timeline.add(in.readInt(), version(in));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    timeline.markAsRemembered();
    return timeline;
  }

  private static Version version(DataInputStream in) throws IOException {
    long high = in.readLong();
    long low = in.readLong();
    int day = in.readInt();
    List<Place> places = new ArrayList<>();
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      int slots = in.readInt();
      places.add(new Place(subject(in), slots));
    }
    return new Version(high, low, places, links(in), day);
  }

  private static List<String> links(DataInputStream in) throws IOException {
    List<String> links = new ArrayList<>(1);
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      links.add(in.readUTF());
    }
    return links;
  }

  private static Subject subject(DataInputStream in) throws IOException {
    return switch (KINDS[in.readUnsignedByte()]) {
      case CHIP -> new Subject.Chip(ChipNumber.ofPacked(in.readLong()));
      case ANIMAL -> new Subject.Animal(in.readUTF());
      case DAMAGED -> damaged(in);
      case RANGE -> new Subject.Range();
    };
  }

  private static Subject damaged(DataInputStream in) throws IOException {
    String original = in.readUTF();
    List<ChipNumber> candidates = new ArrayList<>();
    int size = in.readInt();
    for (int i = 0; i < size; i++) {
      candidates.add(ChipNumber.ofPacked(in.readLong()));
    }
    return new Subject.Damaged(original, candidates);
  }
}
