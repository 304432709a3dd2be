package raster

// levels is how many heights growing tells apart.
const levels = 256

// queue hands out dots, the highest first.
type queue struct {
	at  [levels][]int32
	top int
}

func (q *queue) push(i int32, height uint8) {
	q.at[height] = append(q.at[height], i)
	q.top = max(q.top, int(height))
}

func (q *queue) pop() (i int32, height uint8, ok bool) {
	for q.top >= 0 && len(q.at[q.top]) == 0 {
		q.top--
	}
	if q.top < 0 {
		return 0, 0, false
	}
	n := len(q.at[q.top]) - 1
	i = q.at[q.top][n]
	q.at[q.top] = q.at[q.top][:n]
	return i, uint8(q.top), true
}

// beside calls f for the dots with a side in common.
func beside(i int32, w, h int, f func(int32)) {
	x, y := int(i)%w, int(i)/w
	if x > 0 {
		f(i - 1)
	}
	if x < w-1 {
		f(i + 1)
	}
	if y > 0 {
		f(i - int32(w))
	}
	if y < h-1 {
		f(i + int32(w))
	}
}

// Reach floods a field of heights from seeds. It gives for each dot the least height that has to be
// passed on the best way to it, and where that is: the strait through which it is reached.
func Reach(height []uint8, w, h int, seeds []int32) (least []uint8, strait []int32) {
	least, strait = make([]uint8, len(height)), make([]int32, len(height))
	for i := range strait {
		strait[i] = -1
	}
	var q queue
	for _, s := range seeds {
		if strait[s] < 0 {
			least[s], strait[s] = height[s], s
			q.push(s, height[s])
		}
	}
	for {
		i, level, ok := q.pop()
		if !ok {
			return least, strait
		}
		beside(i, w, h, func(n int32) {
			if strait[n] >= 0 {
				return
			}
			least[n], strait[n] = level, strait[i]
			if height[n] < level {
				least[n], strait[n] = height[n], n
			}
			q.push(n, least[n])
		})
	}
}

// Grow labels the dots of more than no height by seeds (label 1, 2, …; seeds[k] has label k+1) that grow
// together from the heights down until they meet: a watershed (Meyer, 'Color image segmentation',
// 1992).
func Grow(height []uint8, w, h int, seeds ...[]int32) []uint8 {
	label := make([]uint8, len(height))
	var q queue
	for k, s := range seeds {
		for _, i := range s {
			if label[i] == 0 {
				label[i] = uint8(k + 1)
				q.push(i, height[i])
			}
		}
	}
	for {
		i, level, ok := q.pop()
		if !ok {
			return label
		}
		beside(i, w, h, func(n int32) {
			if label[n] == 0 && height[n] > 0 {
				label[n] = label[i]
				q.push(n, min(level, height[n]))
			}
		})
	}
}
