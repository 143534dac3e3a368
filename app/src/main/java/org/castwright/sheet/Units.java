package org.castwright.sheet;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * The units a sheet speaks. Factors: the inch is 25.4 mm and the avoirdupois pound 0.45359237 kg
 * exactly (International Yard and Pound Agreement, 1959), an ounce a sixteenth of it; the US fluid
 * ounce is a 128th of a gallon of 231 cubic inches (NIST Handbook 44, appendix C).
 */
public enum Units {
  METRIC,
  INCH;

  /** From this on a single length is told in whole millimeters. */
  private static final double LONG = 100;

  /** Times that reach this many minutes are told in hours. */
  private static final double HOURS = 180;

  private static final double MM_PER_INCH = 25.4;
  private static final double KG_PER_OUNCE = 0.45359237 / 16;
  private static final double MM3_PER_FLUID_OUNCE = 231 * Math.pow(MM_PER_INCH, 3) / 128;
  private static final double OUNCES_PER_POUND = 16;
  private static final double MM3_PER_CM3 = 1000;
  private static final double GRAMS_PER_KG = 1000;

  /** A length, given in mm. */
  String length(double mm) {
    String whole = mm >= LONG && this == METRIC ? of("%.0f", mm) : number(mm);
    return whole(whole + " " + lengthUnit());
  }

  /** Lengths that belong together, such as a size; given in mm. */
  String size(List<Double> mm) {
    return mm.stream().map(this::number).collect(Collectors.joining(" × ")) + " " + lengthUnit();
  }

  /** The length as a number alone. */
  String number(double mm) {
    return this == METRIC ? of("%.1f", mm) : of("%.2f", mm / MM_PER_INCH);
  }

  /** A length in this unit, given in mm. */
  double inUnit(double mm) {
    return this == METRIC ? mm : mm / MM_PER_INCH;
  }

  /** A volume in cm³ or fluid ounces, given in mm³. */
  double volumeIn(double mm3) {
    return mm3 / (this == METRIC ? MM3_PER_CM3 : MM3_PER_FLUID_OUNCE);
  }

  String volumeUnit() {
    return this == METRIC ? "cm³" : "fl oz";
  }

  /** A temperature in °C or °F, given in °C. */
  double temperatureIn(double celsius) {
    return this == METRIC ? celsius : 1.8 * celsius + 32;
  }

  String temperatureUnit() {
    return this == METRIC ? "°C" : "°F";
  }

  /** A single temperature in whole degrees, given in °C. */
  String degrees(double celsius) {
    return whole(of("%.0f %s", temperatureIn(celsius), temperatureUnit()));
  }

  /** A small length such as a gap, given in mm. */
  String gap(double mm) {
    return whole(this == METRIC ? of("%.2f mm", mm) : of("%.3f in", mm / MM_PER_INCH));
  }

  String lengthUnit() {
    return this == METRIC ? "mm" : "in";
  }

  /** A volume, given in mm³. */
  String volume(double mm3) {
    return this == METRIC
        ? of(mm3 < 1e5 ? "%.1f cm³" : "%.0f cm³", mm3 / MM3_PER_CM3)
        : of("%.2f fl oz", mm3 / MM3_PER_FLUID_OUNCE);
  }

  /** A mass, given in kg. */
  String mass(double kg) {
    if (this == METRIC) {
      return kg < 1
          ? of(kg < 0.1 ? "%.1f g" : "%.0f g", kg * GRAMS_PER_KG)
          : of(kg < 10 ? "%.3f kg" : "%.2f kg", kg);
    }
    double ounces = kg / KG_PER_OUNCE;
    return ounces < OUNCES_PER_POUND
        ? of("%.2f oz", ounces)
        : of("%.0f lb %.1f oz", Math.floor(ounces / OUNCES_PER_POUND), ounces % OUNCES_PER_POUND);
  }

  /** A range of temperatures, given in °C. */
  String temperature(List<Double> celsius) {
    List<Double> shown =
        this == METRIC
            ? celsius
            : celsius.stream().map(c -> (double) Math.round(1.8 * c + 32)).toList();
    return whole(range(shown) + (this == METRIC ? " °C" : " °F"));
  }

  /** A range of times, given in minutes; long ones in hours. */
  static String time(List<Double> minutes) {
    boolean hours = minutes.get(minutes.size() - 1) >= HOURS;
    List<Double> shown = hours ? minutes.stream().map(m -> m / 60).toList() : minutes;
    return whole(range(shown) + (hours ? " h" : " min"));
  }

  /** A single time, given in s. */
  static String seconds(double s) {
    Clock c = Clock.of(s);
    return whole(of(c == Clock.SECONDS ? "%.0f %s" : "%.2g %s", s / c.seconds, c.unit));
  }

  /** How a span of time is told. */
  enum Clock {
    SECONDS("s", 1),
    MINUTES("min", 60),
    HOURS("h", 3600);

    private static final double LEAST = 3;

    final String unit;
    final double seconds;

    Clock(String unit, double seconds) {
      this.unit = unit;
      this.seconds = seconds;
    }

    static Clock of(double s) {
      return s < LEAST * MINUTES.seconds ? SECONDS : s < LEAST * HOURS.seconds ? MINUTES : HOURS;
    }
  }

  private static String range(List<Double> values) {
    return values.stream()
        .map(v -> of("%.1f", v).replaceFirst("\\.0$", ""))
        .distinct()
        .collect(Collectors.joining(" to "));
  }

  static String of(String format, Object... args) {
    return String.format(Locale.ROOT, format, args);
  }

  /** Keeps a number and its unit on one line. */
  private static String whole(String words) {
    return words.replace(' ', Type.NO_BREAK);
  }
}
