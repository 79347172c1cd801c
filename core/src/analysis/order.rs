use super::Frame;

/// Order of the nodes that keeps connected ones close, after Cuthill and McKee, reversed.
///
/// Source: A. George, J. W. H. Liu, *Computer Solution of Large Sparse Positive Definite Systems*, 1981, chapter 4.
pub(super) fn reverse_cuthill_mckee(frame: &Frame) -> Vec<usize> {
    let graph = Graph::new(frame);
    let count = frame.nodes.len();
    let mut order = Vec::with_capacity(count);
    let mut seen = vec![false; count];
    let mut seeds: Vec<usize> = (0..count).collect();
    while order.len() < count {
        seeds.retain(|&node| !seen[node]);
        let Some(&seed) = seeds.iter().min_by_key(|&&node| graph.degree(node)) else { break };
        let first = order.len();
        graph.spread(seed, &mut seen, &mut order);
        // The last node reached lies far out: a better place to start.
        if let Some(&far) = order.last() {
            for node in order.drain(first..) {
                seen[node] = false;
            }
            graph.spread(far, &mut seen, &mut order);
        }
    }
    order.reverse();
    order
}

/// Neighbours of each node, one after another.
struct Graph {
    starts: Vec<usize>,
    neighbours: Vec<usize>,
}

impl Graph {
    fn new(frame: &Frame) -> Self {
        let mut starts = vec![0; frame.nodes.len() + 1];
        for member in &frame.members {
            starts[member.i + 1] += 1;
            starts[member.j + 1] += 1;
        }
        for node in 0..frame.nodes.len() {
            starts[node + 1] += starts[node];
        }
        let mut next = starts.clone();
        let mut neighbours = vec![0; 2 * frame.members.len()];
        for member in &frame.members {
            for (from, to) in [(member.i, member.j), (member.j, member.i)] {
                neighbours[next[from]] = to;
                next[from] += 1;
            }
        }
        Self { starts, neighbours }
    }

    fn degree(&self, node: usize) -> usize {
        self.starts[node + 1] - self.starts[node]
    }

    fn neighbours(&self, node: usize) -> &[usize] {
        &self.neighbours[self.starts[node]..self.starts[node + 1]]
    }

    /// Appends to `order` all that is connected to `seed`, nearest first and of those the least connected first.
    fn spread(&self, seed: usize, seen: &mut [bool], order: &mut Vec<usize>) {
        let mut at = order.len();
        seen[seed] = true;
        order.push(seed);
        while at < order.len() {
            let first = order.len();
            for &node in self.neighbours(order[at]) {
                if seen[node] {
                    continue;
                }
                seen[node] = true;
                order.push(node);
                let mut place = order.len() - 1;
                while place > first && self.degree(order[place - 1]) > self.degree(node) {
                    order.swap(place - 1, place);
                    place -= 1;
                }
            }
            at += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::analysis::Member;

    #[test]
    fn a_scattered_chain_comes_back_in_line() {
        let mut frame = Frame::default();
        for x in [0, 3, 1, 4, 2] {
            frame.add_node(f64::from(x), 0.0);
        }
        for (i, j) in [(0, 2), (2, 4), (4, 1), (1, 3)] {
            frame.add_member(Member::beam(i, j, 1.0, 1.0));
        }
        let order = reverse_cuthill_mckee(&frame);
        let line = [0, 2, 4, 1, 3];
        let mut reversed = line;
        reversed.reverse();
        assert!(order == line || order == reversed, "{order:?}");
    }

    #[test]
    fn the_hub_of_a_star_comes_late() {
        // Rows of the leaves before it then have nothing beside their diagonals.
        let mut frame = Frame::default();
        for x in 0..6 {
            frame.add_node(f64::from(x), f64::from(x * x));
        }
        for leaf in [0, 1, 3, 4, 5] {
            frame.add_member(Member::beam(2, leaf, 1.0, 1.0));
        }
        assert_eq!(reverse_cuthill_mckee(&frame)[4], 2);
    }

    #[test]
    fn every_node_of_every_part_comes_once() {
        let mut frame = Frame::default();
        for x in 0..6 {
            frame.add_node(f64::from(x), 0.0);
        }
        frame.add_member(Member::beam(5, 1, 1.0, 1.0));
        frame.add_member(Member::beam(2, 3, 1.0, 1.0));
        let mut order = reverse_cuthill_mckee(&frame);
        order.sort_unstable();
        assert_eq!(order, [0, 1, 2, 3, 4, 5]);
    }
}
