// Exact answers for overlays of lines and circular arcs, one JSON case a line in, one JSON answer a line out.
//
//   ./build.sh && ./oracle < cases.jsonl
//
// Built on CGAL's arrangements of circle segments (Debian libcgal-dev). Every number of a case is taken as the
// rational number that its double stands for; nothing is rounded before the measures of the answer. README.md says
// what goes in and what comes out.
#include <CGAL/Arr_circle_segment_traits_2.h>
#include <CGAL/Arr_extended_dcel.h>
#include <CGAL/Arrangement_with_history_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>

#include <boost/multiprecision/mpfr.hpp>
#include <iostream>
#include <map>
#include <nlohmann/json.hpp>
#include <numeric>
#include <queue>
#include <set>

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Number = Kernel::FT;
using Traits = CGAL::Arr_circle_segment_traits_2<Kernel>;
using Arrangement = CGAL::Arrangement_with_history_2<Traits>;
using Curve = Traits::Curve_2;
using Point = Traits::Point_2;
using Coordinate = Traits::CoordNT;
using Place = Kernel::Point_2;
using Json = nlohmann::json;
/** Measures are taken with 50 digits: areas of slivers are differences of large ones. */
using Real = boost::multiprecision::number<boost::multiprecision::mpfr_float_backend<50>, boost::multiprecision::et_off>;

struct Drawn {
  Curve curve;
  int operand;
  /** A line: whether it runs to the right (or straight up). An arc: whether it runs counter-clockwise. */
  bool forward;
};

static Number exact(const Json &value) { return Number(value.get<double>()); }
static Place place(const Json &value) { return Place(exact(value[0]), exact(value[1])); }
static Point plain(const Place &p) { return Point(p.x(), p.y()); }

/** One operand after another is drawn into this. */
struct Drawing {
  std::vector<Drawn> drawn;

  void line(const Place &a, const Place &b, int operand) {
    if (a != b) drawn.push_back({Curve(a, b), operand, a < b});
  }

  void circle(const Place &c, const Number &r, bool ccw, int operand) {
    if (r > 0) drawn.push_back({Curve(Kernel::Circle_2(c, r * r, CGAL::COUNTERCLOCKWISE)), operand, ccw});
  }

  /** Where the ray from a centre through a place meets the circle: coordinates with one square root. */
  static Point onto(const Place &a, const Place &c, const Number &r) {
    const Number dx = a.x() - c.x(), dy = a.y() - c.y();
    const Number share = r * r / (dx * dx + dy * dy);
    if (share == 1) return plain(a);
    return Point(Coordinate(c.x(), dx, share), Coordinate(c.y(), dy, share));
  }

  /** The way along a radius from an end of an arc to its place on the circle, or back. */
  void spoke(const Place &a, const Point &on, const Place &c, const Number &r, bool inwards, int operand) {
    if (on.equals(plain(a))) return;
    const Number dx = a.x() - c.x(), dy = a.y() - c.y();
    const Kernel::Line_2 radius(c, a);
    const bool leaves = r * r > dx * dx + dy * dy;  // from the place to the circle is away from the centre
    const bool rises = (dx > 0 || (dx == 0 && dy > 0)) == leaves;
    const Curve way = inwards ? Curve(radius, on, plain(a)) : Curve(radius, plain(a), on);
    drawn.push_back({way, operand, inwards ? !rises : rises});
  }

  /** The radius of an arc: where none is given that of its first end, rounded, so that arcs of one circle share it. */
  static Number radius_of(const Json &edge) {
    if (edge.contains("r")) return exact(edge["r"]);
    return Number(std::hypot(edge["a"][0].get<double>() - edge["c"][0].get<double>(),
                             edge["a"][1].get<double>() - edge["c"][1].get<double>()));
  }

  static bool same_circle(const Json &one, const Json &other) {
    return one["type"] == "arc" && other["type"] == "arc" && one["c"] == other["c"] && one["ccw"] == other["ccw"] &&
           radius_of(one) == radius_of(other);
  }

  /**
   * An arc on exactly its circle. Ends that rounding has left off it are joined to it by spokes, so that the chain stays
   * closed and the circle stays what it was; where the next arc is of the same circle the two would cancel.
   */
  void arc(const Json &edge, bool joins, bool goes_on, int operand) {
    const Place a = place(edge["a"]), b = place(edge["b"]), c = place(edge["c"]);
    const Number r = radius_of(edge);
    if (a == c || b == c || r <= 0) return line(a, b, operand);
    const bool ccw = edge["ccw"].get<bool>();
    const Point from = onto(a, c, r), to = onto(b, c, r);
    if (!joins) spoke(a, from, c, r, false, operand);
    if (!from.equals(to)) {
      const Kernel::Circle_2 circle(c, r * r, ccw ? CGAL::COUNTERCLOCKWISE : CGAL::CLOCKWISE);
      drawn.push_back({Curve(circle, from, to), operand, ccw});
    }
    if (!goes_on) spoke(b, to, c, r, true, operand);
  }

  void loop(const Json &loop, int operand) {
    const std::size_t n = loop.size();
    if (n == 0) return;
    const Json &first = loop[0];
    bool whole = first["type"] == "arc" && (n > 1 || first["a"] == first["b"]);
    for (const Json &one : loop) whole = whole && same_circle(first, one);
    // Arcs of one circle that come round to where they began: this is meant once round.
    if (whole && n <= 4) return circle(place(first["c"]), radius_of(first), first["ccw"].get<bool>(), operand);
    for (std::size_t k = 0; k < n; k++) {
      const Json &edge = loop[k];
      if (edge["type"] == "line") {
        line(place(edge["a"]), place(edge["b"]), operand);
      } else {
        arc(edge, same_circle(loop[(k + n - 1) % n], edge), same_circle(edge, loop[(k + 1) % n]), operand);
      }
    }
  }

  void shape(const Json &shape, int operand) {
    if (shape.contains("loops")) {
      for (const Json &one : shape["loops"]) loop(one, operand);
    } else if (shape.contains("outer") && shape["outer"].is_array()) {
      loop(shape["outer"], operand);
      for (const Json &one : shape["holes"]) loop(one, operand);
    } else if (shape["type"] == "disc") {
      circle(place(shape["c"]), exact(shape["r"]), true, operand);
    } else if (shape["type"] == "ring") {
      circle(place(shape["c"]), exact(shape["outer"]), true, operand);
      circle(place(shape["c"]), exact(shape["inner"]), false, operand);
    } else {
      throw std::invalid_argument("a shape has loops, or outer and holes, or type disc or ring");
    }
  }
};

/** The plane as the operands part it, with how often each of them goes round each face. */
struct Faces {
  Arrangement arrangement;
  std::map<const Curve *, std::pair<int, bool>> who;
  std::map<Arrangement::Face_const_handle, std::vector<int>> winding;

  Faces(const std::vector<Drawn> &drawn, int operands) {
    for (const Drawn &one : drawn) {
      const auto handle = CGAL::insert(arrangement, one.curve);
      who[&*handle] = {one.operand, one.forward};
    }
    const auto outside = arrangement.unbounded_face();
    winding[outside] = std::vector<int>(operands, 0);
    std::queue<Arrangement::Face_const_handle> open;
    open.push(outside);
    while (!open.empty()) {
      const auto face = open.front();
      open.pop();
      each_halfedge(face, [&](Arrangement::Halfedge_const_handle half) {
        const auto across = half->twin()->face();
        if (winding.count(across)) return;
        std::vector<int> sum = winding[face];
        cross(half, sum);
        winding[across] = sum;
        open.push(across);
      });
    }
  }

  template <typename Visit> static void each_halfedge(Arrangement::Face_const_handle face, Visit visit) {
    const auto ring = [&](Arrangement::Ccb_halfedge_const_circulator start) {
      auto at = start;
      do visit(Arrangement::Halfedge_const_handle(at));
      while (++at != start);
    };
    if (face->has_outer_ccb()) ring(face->outer_ccb());
    for (auto hole = face->inner_ccbs_begin(); hole != face->inner_ccbs_end(); ++hole) ring(*hole);
  }

  /** Adds up what changes from the face to the left of a half-edge to the one across it. */
  void cross(Arrangement::Halfedge_const_handle half, std::vector<int> &sum) const {
    const bool right = half->direction() == CGAL::ARR_LEFT_TO_RIGHT;
    const auto &piece = half->curve();
    for (auto from = arrangement.originating_curves_begin(half); from != arrangement.originating_curves_end(half); ++from) {
      const auto &[operand, forward] = who.at(&*from);
      bool along = forward;
      if (!piece.is_linear()) {
        // Counter-clockwise, the lower half of a circle runs to the right.
        const bool lower = (piece.orientation() == CGAL::COUNTERCLOCKWISE) == piece.is_directed_right();
        along = forward == lower;
      }
      sum[operand] += along == right ? -1 : 1;
    }
  }
};

static Real real(const Number &value) {
  Real out;
  mpfr_set_q(out.backend().data(), value.exact().backend().data(), MPFR_RNDN);
  return out;
}

static Real real(const Coordinate &value) {
  if (!value.is_extended()) return real(value.a0());
  return real(value.a0()) + real(value.a1()) * sqrt(real(value.root()));
}

struct Measure {
  Real area = 0;
  Real perimeter = 0;
};

/** What one half-edge adds to the area and the length of the boundary to its left. */
static Measure measured(Arrangement::Halfedge_const_handle half) {
  const Real ax = real(half->source()->point().x()), ay = real(half->source()->point().y());
  const Real bx = real(half->target()->point().x()), by = real(half->target()->point().y());
  const Real dx = bx - ax, dy = by - ay;
  const Real chord = sqrt(dx * dx + dy * dy);
  Measure sum{(ax * by - ay * bx) / 2, chord};
  const auto &piece = half->curve();
  if (piece.is_linear()) return sum;
  const auto circle = piece.supporting_circle();
  const Real squared = real(circle.squared_radius()), radius = sqrt(squared);
  // An x-monotone piece turns by half a turn at most.
  const Real cx = real(circle.center().x()), cy = real(circle.center().y());
  const Real cross = (ax - cx) * (by - cy) - (ay - cy) * (bx - cx);
  const Real dot = (ax - cx) * (bx - cx) + (ay - cy) * (by - cy);
  const Real turn = atan2(abs(cross), dot);
  const bool lower = (piece.orientation() == CGAL::COUNTERCLOCKWISE) == piece.is_directed_right();
  const bool ccw = lower == (half->direction() == CGAL::ARR_LEFT_TO_RIGHT);
  const Real segment = squared * (turn - sin(turn)) / 2;
  sum.area += ccw ? segment : -segment;
  sum.perimeter = radius * turn;
  return sum;
}

struct Piece {
  Measure measure;
  int holes = 0;
};

using Face = Arrangement::Face_const_handle;

/** Faces in groups: those of a chosen kind that share an edge are one, and so are all others that do. */
struct Groups {
  std::map<Face, int> number;
  std::vector<int> parent;

  template <typename Keeps> Groups(const Faces &faces, Keeps keeps) {
    for (const auto &[face, winding] : faces.winding) number.emplace(face, (int)number.size());
    parent.resize(number.size());
    std::iota(parent.begin(), parent.end(), 0);
    for (const auto &[face, k] : number)
      Faces::each_halfedge(face, [&, face = face, k = k](Arrangement::Halfedge_const_handle half) {
        const auto across = half->twin()->face();
        if (keeps(face) == keeps(across)) parent[leader(k)] = leader(number.at(across));
      });
  }

  int leader(int k) {
    while (parent[k] != k) k = parent[k] = parent[parent[k]];
    return k;
  }

  int of(Face face) { return leader(number.at(face)); }
};

/** The faces that a rule keeps, as pieces: faces that share an edge are one. */
template <typename Rules> static std::vector<Piece> pieces_of(const Faces &faces, Rules rule) {
  std::map<Face, bool> kept;
  for (const auto &[face, winding] : faces.winding) kept[face] = !face->is_unbounded() && rule(winding);
  Groups groups(faces, [&](Face face) { return kept.at(face); });
  std::map<int, Piece> pieces;
  std::map<int, std::set<int>> around;
  for (const auto &[face, is_kept] : kept) {
    if (!is_kept) continue;
    const int piece = groups.of(face);
    Faces::each_halfedge(face, [&](Arrangement::Halfedge_const_handle half) {
      const auto across = half->twin()->face();
      if (kept.at(across)) return;
      const Measure add = measured(half);
      pieces[piece].measure.area += add.area;
      pieces[piece].measure.perimeter += add.perimeter;
      around[piece].insert(groups.of(across));
    });
  }
  std::vector<Piece> list;
  for (auto &[k, piece] : pieces) {
    piece.holes = (int)around[k].size() - 1;
    list.push_back(piece);
  }
  std::sort(list.begin(), list.end(), [](const Piece &a, const Piece &b) { return a.measure.area > b.measure.area; });
  return list;
}

/**
 * Between how many pieces there may be when what is thinner than a length may close or open: the least if all of it lets
 * through, the most if none of it does. Pieces that are thin themselves do not count.
 */
template <typename Rules> static std::pair<int, int> range_of(const Faces &faces, Rules rule, const Real &thin) {
  std::map<Face, bool> kept, thick;
  for (const auto &[face, winding] : faces.winding) {
    Measure sum;
    Faces::each_halfedge(face, [&](Arrangement::Halfedge_const_handle half) {
      const Measure add = measured(half);
      sum.area += add.area;
      sum.perimeter += add.perimeter;
    });
    thick[face] = face->is_unbounded() || 2 * sum.area > thin * sum.perimeter;
    kept[face] = !face->is_unbounded() && rule(winding);
  }
  const auto count = [&](bool through) {
    Groups groups(faces, [&](Face face) { return thick.at(face) ? kept.at(face) : through; });
    std::set<int> pieces;
    for (const auto &[face, is_kept] : kept)
      if (is_kept && thick.at(face)) pieces.insert(groups.of(face));
    return (int)pieces.size();
  };
  return {count(true), count(false)};
}

using Rule = std::function<bool(const std::vector<int> &)>;

static Rule rule_of(const std::string &op, int count) {
  const auto in = [count](const std::vector<int> &w) {
    return (int)std::count_if(w.begin(), w.begin() + count, [](int k) { return k > 0; });
  };
  if (op == "union") return [=](auto &w) { return in(w) > 0; };
  if (op == "intersect") return [=](auto &w) { return in(w) == count; };
  if (op == "xor") return [=](auto &w) { return in(w) % 2 == 1; };
  if (op == "subtract") return [=](auto &w) { return w[0] > 0 && in(w) == 1; };
  if (op == "nonzero") return [=](auto &w) { return w[0] != 0; };
  if (op == "evenodd") return [=](auto &w) { return w[0] % 2 != 0; };
  throw std::invalid_argument("op is union, intersect, xor, subtract, nonzero or evenodd");
}

static Json answer(const Json &asked) {
  Drawing drawing;
  int count = 0;
  if (asked.contains("outline")) {  // an outline and its cuts
    drawing.shape(asked["outline"], count++);
    for (const Json &cut : asked["cuts"]) drawing.shape(cut, count++);
  } else {
    for (const Json &operand : asked["operands"]) drawing.shape(operand, count++);
  }
  int operands = count;
  if (asked.contains("got")) drawing.shape(Json{{"loops", asked["got"]}}, operands++);
  const Faces faces(drawing.drawn, std::max(operands, 1));
  const Rule keeps = rule_of(asked.value("op", "subtract"), count);
  Json out;
  if (asked.contains("id")) out["id"] = asked["id"];
  Measure all;
  out["pieces"] = Json::array();
  for (const Piece &piece : pieces_of(faces, keeps)) {
    all.area += piece.measure.area;
    all.perimeter += piece.measure.perimeter;
    out["pieces"].push_back({{"area", piece.measure.area.convert_to<double>()},
                             {"perimeter", piece.measure.perimeter.convert_to<double>()},
                             {"holes", piece.holes}});
  }
  out["area"] = all.area.convert_to<double>();
  out["perimeter"] = all.perimeter.convert_to<double>();
  out["vertices"] = faces.arrangement.number_of_vertices();
  out["faces"] = faces.arrangement.number_of_faces();
  if (asked.contains("thin")) {
    const auto [least, most] = range_of(faces, keeps, Real(asked["thin"].get<double>()));
    out["least"] = least;
    out["most"] = most;
  }
  if (asked.contains("got")) {
    Real off = 0;
    for (const Piece &piece : pieces_of(faces, [&](auto &w) { return keeps(w) != (w[count] > 0); })) off += piece.measure.area;
    out["off"] = off.convert_to<double>();
  }
  return out;
}

int main() {
  std::ios::sync_with_stdio(false);
  std::string text;
  while (std::getline(std::cin, text)) {
    if (text.empty()) continue;
    Json asked;
    try {
      asked = Json::parse(text);
      std::cout << answer(asked).dump() << std::endl;
    } catch (const std::exception &fault) {
      Json out{{"error", fault.what()}};
      if (asked.is_object() && asked.contains("id")) out["id"] = asked["id"];
      std::cout << out.dump() << std::endl;
    }
  }
}
