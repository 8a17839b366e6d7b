package withers.explain;

import java.util.List;

/** An explanation, part by part: a heading and its lines. */
public record Explanation(String title, List<Part> parts) {

  /** One part. */
  public record Part(String heading, List<String> lines) {
    public Part {
      lines = List.copyOf(lines);
    }
  }

  public Explanation {
    parts = List.copyOf(parts);
  }
}
